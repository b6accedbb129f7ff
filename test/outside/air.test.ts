import { describe, expect, it } from 'vitest';
import { airDensity } from '../../src/core/air';

describe('airDensity', () => {
  // CIPM-2007 (Picard et al., Metrologia 45 (2008) 149) evaluated independently in Python;
  // the paper itself prints no check value that could be read here.
  it.each([
    [20, 101_325, 0.5, 1.199314],
    [20, 101_325, 0, 1.204557],
    [22, 101_325, 0.5, 1.190483],
    [27, 110_000, 0.8, 1.264658],
  ])('at %d C, %d Pa, humidity %d', (celsius, pressure, humidity, density) => {
    expect(airDensity(celsius + 273.15, pressure, humidity)).toBeCloseTo(density, 6);
  });

  it('is near the ideal dry gas of ISO 2533:1975 at sea level, 1.225 kg/m3', () => {
    expect(airDensity(288.15, 101_325, 0)).toBeCloseTo(1.225, 2);
  });
});
