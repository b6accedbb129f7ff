import { describe, expect, it } from 'vitest';
import { airDensity, airViscosity, soundSpeed } from '../../src/core/air';

describe('airDensity', () => {
  // CIPM-2007 (Picard et al., Metrologia 45 (2008) 149) evaluated independently in Python;
  // the paper itself prints no check value that could be read here.
  it.each([
    [20, 101_325, 0.5, 1.199314],
    [20, 101_325, 0, 1.204557],
    [20, 100_000, 0.5, 1.183557],
    [22, 101_325, 0.5, 1.190483],
    [25, 101_325, 0.5, 1.177315],
    [27, 110_000, 0.8, 1.264658],
  ])('at %d C, %d Pa, humidity %d', (celsius, pressure, humidity, density) => {
    expect(airDensity(celsius + 273.15, pressure, humidity)).toBeCloseTo(density, 6);
  });

  it('is near the ideal dry gas of ISO 2533:1975 at sea level, 1.225 kg/m3', () => {
    expect(airDensity(288.15, 101_325, 0)).toBeCloseTo(1.225, 2);
  });
});

// ISO 2533:1975 (Table 1 and its formulas; as the US Standard Atmosphere 1976). Sea level is published: 340.294 m/s and
// 1.7894e-5 Pa s (from memory); the other rows are its formulas evaluated independently in Python.
it.each([
  [0, 331.318, 1.7161e-5],
  [10, 337.329, 1.7652e-5],
  [15, 340.294, 1.7894e-5],
  [20, 343.234, 1.8134e-5],
  [25, 346.148, 1.8372e-5],
  [30, 349.039, 1.8609e-5],
])('speed of sound and viscosity of dry air at %d C', (celsius, speed, viscosity) => {
  expect(soundSpeed(celsius + 273.15)).toBeCloseTo(speed, 3);
  expect(airViscosity(celsius + 273.15)).toBeCloseTo(viscosity, 9);
});
