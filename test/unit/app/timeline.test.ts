import { describe, expect, it } from 'vitest';
import { timelineOf } from '../../../src/app/timeline';
import type { Quantity } from '../../../src/core/estimate';
import { exampleReduction } from '../../fixtures/reduction';
import { exampleShot } from '../../fixtures/shot';

const { result } = exampleReduction({ shot: exampleShot(), footageSha256: null });
const none = { unavailable: { code: 'none', message: 'There is none.' } };
const quantity = (value: number, u: number): Quantity => ({
  value,
  u,
  interval: [value - 2 * u, value + 2 * u],
  coverage: 0.95,
  dof: null,
});

describe('the timeline of a result', () => {
  it('counts from the exit, in the order of time', () => {
    const timeline = timelineOf(result);
    expect(timeline?.from).toBe('exit');
    expect(timeline?.events.map(({ kind }) => kind)).toEqual(['contact', 'burst', 'exit']);
    const [contact, , exit] = timeline?.events ?? [];
    // 100 and 250 us on the clock.
    expect(contact?.time).toBeCloseTo(-1.5e-4, 9);
    expect(exit?.time).toBe(0);
  });

  it('gives the burst the interval of the lead, which counts what burst and exit share', () => {
    const timeline = timelineOf({ ...result, lead: quantity(1.3e-4, 1e-6) });
    const burst = timeline?.events.find(({ kind }) => kind === 'burst');
    expect(burst?.time).toBeCloseTo(-1.3e-4, 9);
    expect(burst?.low).toBeCloseTo(-1.32e-4, 9);
    expect(burst?.high).toBeCloseTo(-1.28e-4, 9);
  });

  it('has puncture, target and sound where a result states them', () => {
    const { sealBurst } = result;
    if (!('value' in sealBurst)) throw new Error('the example has a burst');
    const timeline = timelineOf({
      ...result,
      rearBurst: { ...sealBurst, ...quantity(-0.01, 1e-5) },
      flight: {
        ...result.flight,
        target: {
          time: quantity(0.02, 1e-5),
          speedBefore: none,
          speedAfter: none,
          energyGivenUp: none,
        },
      },
      sound: {
        burst: quantity(1e-3, 1e-5),
        minusFilm: none,
        agrees: null,
        impact: none,
        meanSpeed: none,
      },
    });
    expect(timeline?.events.map(({ kind }) => kind)).toEqual([
      'puncture',
      'contact',
      'burst',
      'exit',
      'burstHeard',
      'target',
    ]);
    expect(timeline?.events[0]?.time).toBeCloseTo(-0.01025, 9);
  });

  it('counts on the clock where no exit is known, and is none without any event', () => {
    const missing = { ...result, exitTime: none, lead: none, contact: none };
    const timeline = timelineOf(missing);
    expect(timeline?.from).toBe('clock');
    expect(timeline?.events.map(({ kind, time }) => [kind, time])).toEqual([['burst', 1.2e-4]]);
    expect(timelineOf({ ...missing, sealBurst: { ...none, bounds: [null, null] } })).toBeNull();
  });
});
