import { describe, expect, it } from 'vitest';
import { isAvailable, type Reported } from '../../../src/core/estimate';
import { reduceShot } from '../../../src/reduction/reduceShot';
import { film, going, inputs, RATE, recorder, scriptedMeasurer, slowing } from './scriptedFilm';

const METRES = 1.25e-3;
const reduce = async (
  change: Record<string, unknown>,
  at: (frame: number) => readonly [number, number] | null,
) => {
  const { onEvent } = recorder();
  const measurer = scriptedMeasurer({ at });
  return (await reduceShot(inputs(change), film, measurer, onEvent, going)).result;
};
const found = (reported: Reported) => {
  if (!isAvailable(reported)) throw new Error(reported.unavailable.message);
  return reported;
};
const free = slowing(12, 8);
/** The same flight, rising by 1 px in 20. */
const rising = (frame: number): readonly [number, number] | null => {
  const place = free(frame);
  return place && [place[0], 30 - (place[0] - 100) / 20];
};

describe('what else is read off the flight', () => {
  it('has the energy of the exit velocity and the direction above the rows', async () => {
    const { flight, exitVelocity } = await reduce({}, rising);
    const v = found(exitVelocity).value;
    expect(found(flight.kineticEnergy).value / (0.00095 * v ** 2)).toBeCloseTo(1, 6);
    expect(found(flight.momentum).value / (0.0019 * v)).toBeCloseTo(1, 6);
    const { value, u } = found(flight.elevation);
    expect(u).toBeLessThan(0.005);
    expect(Math.abs(value - Math.atan(1 / 20))).toBeLessThan(3 * u);
    expect(flight.target).toBeNull();
  });

  it('counts upwards also where the ball flies to the left', async () => {
    const { flight } = await reduce({ muzzle: { point: [190, 30], axis: null } }, (frame) =>
      frame < 8 || frame > 21 ? null : [190 - 12 * (frame - 8), 30 - 0.6 * (frame - 8)],
    );
    const { value, u } = found(flight.elevation);
    expect(Math.abs(value - Math.atan(1 / 20))).toBeLessThan(3 * u);
  });

  it('gives the reason of the missing exit in every place', async () => {
    const { flight } = await reduce({ target: { distance: { value: 0.2, u: 0.001 } } }, () => null);
    const { target, ...others } = flight;
    for (const reported of [...Object.values(others), ...Object.values(target ?? {})]) {
      expect(reported).toMatchObject({ unavailable: { code: 'noBall' } });
    }
    expect(target).not.toBeNull();
  });
});

describe('a bore that is seen through', () => {
  // 0.12 px a frame squared: 15 000 m/s^2.
  const ACCELERATION = 0.12 * METRES * RATE ** 2;
  const fromBore = (frame: number): readonly [number, number] | null => {
    const since = frame - 8.3;
    if (since >= 0) return slowing(12, 8.3)(frame);
    const x = 100 + 12 * since + 0.06 * since ** 2;
    return x < 15 ? null : [x, 30];
  };

  it('tells the acceleration in it, the exit velocity left as it is', async () => {
    const { flight, exitVelocity, positions } = await reduce({}, fromBore);
    const { value, u } = found(flight.boreAcceleration);
    expect(Math.abs(value - ACCELERATION)).toBeLessThan(3 * u);
    expect(u).toBeLessThan(ACCELERATION / 2);
    expect(positions.filter(({ why }) => why?.code === 'beforeExit').length).toBeGreaterThan(4);
    const opaque = await reduce({}, (frame) => (frame < 9 ? null : fromBore(frame)));
    expect(found(exitVelocity).value).toBeCloseTo(found(opaque.exitVelocity).value, 1);
    expect(opaque.flight.boreAcceleration).toMatchObject({ unavailable: { code: 'boreNotSeen' } });
  });

  it('carries the exit too where bore and flight together are chosen', async () => {
    const fit = { model: 'boreAndFlight', robust: true };
    const { flight, exitVelocity, positions, budget } = await reduce({ fit }, fromBore);
    const { value, u } = found(exitVelocity);
    expect(Math.abs(value - 12 * METRES * RATE)).toBeLessThan(3 * u);
    expect(Math.abs(found(flight.boreAcceleration).value - ACCELERATION)).toBeLessThan(
      3 * found(flight.boreAcceleration).u,
    );
    expect(budget.exitVelocity.map(({ source }) => source)).toContain(
      'refraction in the wall of the tube',
    );
    const inBore = positions.filter(({ x, used }) => used && x !== null && x < 100);
    expect(inBore.length).toBeGreaterThan(3);
  });
});

describe('a target', () => {
  const target = { distance: { value: 0.15, u: 0.001 } };

  it('in the way ends the stretch that is fitted, and says so', async () => {
    const { positions, flight, exitVelocity } = await reduce({ target }, free);
    const reach = (0.15 - 0.015) / METRES;
    for (const { x, used, why } of positions) {
      if (x === null || Math.abs(x - 100 - reach) < 1) continue;
      if (x - 100 > reach) expect([used, why?.code]).toEqual([false, 'pastTarget']);
      else expect(why?.code).not.toBe('pastTarget');
    }
    const v = found(exitVelocity);
    expect(Math.abs(v.value - 12 * METRES * RATE)).toBeLessThan(3 * v.u);
    // Nothing stands there: the ball is as fast behind it.
    const { speedBefore, speedAfter, energyGivenUp, time } = flight.target ?? {};
    if (!(speedBefore && speedAfter && energyGivenUp && time)) throw new Error('No target.');
    const [before, after] = [found(speedBefore), found(speedAfter)];
    expect(Math.abs(before.value - after.value)).toBeLessThan(3 * Math.hypot(before.u, after.u));
    const given = found(energyGivenUp);
    expect(Math.abs(given.value)).toBeLessThan(3 * given.u);
    expect(found(time).value).toBeCloseTo(8 / RATE + 0.15 / v.value, 4);
  });

  it('that slows the ball gets the difference of its energies', async () => {
    // From 12 px a frame to 9 at the target, turned by a twentieth.
    const hit = (frame: number): readonly [number, number] | null => {
      const place = free(frame);
      if (place === null || place[0] < 220) return place;
      const on = 0.75 * (place[0] - 220);
      return [220 + on, 30 + on / 20];
    };
    // The search follows one smooth flight: what comes after the hit is placed by hand.
    const manualPoints = Array.from({ length: 40 }, (_, frame) => ({ frame, place: hit(frame) }))
      .filter(({ place }) => place !== null && place[0] > 220)
      .map(({ frame, place }) => ({ frame, x: place?.[0], y: place?.[1], ux: 0.1, uy: 0.1 }));
    const until = (frame: number) => ((hit(frame)?.[0] ?? 999) < 222 ? hit(frame) : null);
    const edits = { rejectedFrames: [], manualPoints, seeds: [] };
    const { flight, positions } = await reduce({ target, edits }, until);
    expect(positions.some(({ why }) => why?.code === 'pastTarget')).toBe(true);
    const { speedBefore, speedAfter, energyGivenUp } = flight.target ?? {};
    if (!(speedBefore && speedAfter && energyGivenUp)) throw new Error('No target.');
    const [before, after, given] = [found(speedBefore), found(speedAfter), found(energyGivenUp)];
    const truth = before.value * 0.75 * Math.hypot(1, 1 / 20);
    expect(Math.abs(after.value - truth)).toBeLessThan(3 * after.u);
    expect(given.value).toBeCloseTo(0.00095 * (before.value ** 2 - after.value ** 2), 3);
  });

  it('beyond the view has a speed before it and none after', async () => {
    const { flight, positions } = await reduce(
      { target: { distance: { value: 1, u: 0.005 } } },
      free,
    );
    expect(positions.every(({ why }) => why?.code !== 'pastTarget')).toBe(true);
    expect(isAvailable(flight.target?.speedBefore as Reported)).toBe(true);
    expect(flight.target?.speedAfter).toMatchObject({
      unavailable: { code: 'nothingAfterTarget' },
    });
  });
});
