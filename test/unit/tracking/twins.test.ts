import { expect, test } from 'vitest';
import type { Run } from '../../../src/tracking/path';
import { twinOf } from '../../../src/tracking/twins';
import type { TrackPrior } from '../../../src/tracking/types';

const prior: TrackPrior = {
  axis: null,
  muzzle: [0, 0],
  radius: 30,
  timeOf: (frame) => frame,
  placed: [],
  seeds: [],
};

/** A run at `step` px a frame, seen from one frame to another, as good as any. */
const run = (step: number, from: number, to: number): Run => ({
  path: { time: 0, origin: [0, 0], velocity: [step, 0], acceleration: [0, 0] },
  sightings: Array.from({ length: to - from + 1 }, (_, k) => ({
    frame: from + k,
    time: from + k,
    x: step * (from + k),
    y: 0,
    likeness: 0.9,
    score: 0.9,
    visible: 1,
    rim: null,
    candidate: 0,
  })),
  support: 0.9 * (to - from + 1),
  seedsPassed: 0,
});

test('one ball in two pieces, before and after something hides it, is not two', () => {
  const before = run(24, 40, 54);
  const after = run(17, 59, 74);
  expect(twinOf(after, [after, before], prior)).toBeNull();
  const meanwhile = run(17, 42, 57);
  expect(twinOf(meanwhile, [meanwhile, before], prior)).toBe(before);
});
