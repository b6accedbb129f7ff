import { describe, expect, it } from 'vitest';
import { setScene } from '../../../src/reduction/scene';
import { sharedInputs } from '../../../src/reduction/sharedInputs';
import { inputs } from './scriptedFilm';

const METRES_PER_PIXEL = 1.25e-3;
const sharedOf = (given: ReturnType<typeof inputs>) =>
  sharedInputs(given.shot, setScene(given), METRES_PER_PIXEL, { cosineU: 2e-6 });

describe('the inputs that all points share', () => {
  const given = inputs();
  const shared = sharedOf(given);
  const scaleSource = (name: string) => shared.scaleSources.find(({ source }) => source === name);

  it('state length and rate in their own units', () => {
    const [length] = given.shot.scale.lengths;
    const known = scaleSource('known length');
    expect(known?.stated).toEqual({ unit: 'm', share: expect.closeTo(1 / 0.375, 9) });
    expect((known?.u ?? 0) / (known?.stated?.share ?? 1)).toBeCloseTo(length?.u ?? 0, 12);
    const ends = scaleSource('ends of the known length');
    // Two ends 300 px apart.
    expect(ends?.stated).toEqual({ unit: 'px', share: expect.closeTo(Math.SQRT2 / 300, 9) });
    expect(shared.clockSources).toEqual([
      expect.objectContaining({
        source: 'recording rate',
        u: expect.closeTo(5e-5, 12),
        stated: { unit: '1/s', share: -1e-4 },
      }),
    ]);
  });

  it('hold the direction of the flight, from the film', () => {
    expect(scaleSource('direction of the flight')).toMatchObject({ type: 'A', u: 2e-6 });
  });

  it('split the density of the air into its readings', () => {
    const sources = shared.airSources ?? [];
    expect(sources.map(({ source, u, unit }) => [source, u, unit])).toEqual([
      ['air temperature', 2, 'K'],
      ['air pressure', 1500, 'Pa'],
      ['air humidity', 0.2, '1'],
    ]);
    // In proportion to pressure, against temperature, a little more so because warmer air holds more vapour.
    const [temperature = 0, pressure = 0, humidity = 0] = sources.map(({ share }) => share);
    expect(Math.abs(temperature + 2 / 293.15)).toBeLessThan(1e-3);
    expect(pressure).toBeCloseTo(1500 / 101_325, 3);
    expect(humidity).toBeLessThan(0);
    expect(shared.airDensity.u / shared.airDensity.value).toBeCloseTo(
      Math.hypot(temperature, pressure, humidity),
      12,
    );
  });

  it('take the drift of a clock that writes time stamps as bounded', () => {
    const timing = { source: 'containerTimestamps', recordingRate: null } as const;
    const stamped = inputs({ timing });
    const timestamps = Float64Array.from({ length: stamped.info.frameCount }, (_, i) => i / 240);
    const [clock] = sharedOf({ ...stamped, timestamps }).clockSources;
    expect(clock).toMatchObject({ source: "the file's time stamps", spread: 'rectangular' });
    expect(clock?.u).toBeCloseTo(50e-6 / Math.sqrt(3), 12);
  });
});
