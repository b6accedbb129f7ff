import { describe, expect, it } from 'vitest';
import { success } from '../../../src/core/reason';
import { measureFilm } from '../../../src/reduction/measureFilm';
import type { FrameMeasurer } from '../../../src/reduction/types';
import { film, going, inputs, scriptedMeasurer } from './scriptedFilm';

/** A light ball that the air slows by a sixth over the film, so that it is measured twice. */
const DRAG = 6e-4;
const BALL = { diameter: { value: 0.03, u: 1e-5 }, mass: { value: 4.5e-4, u: 1e-6 } };
const SPEED = 14;
const FROM = 6.4;
/** Something that goes along with the ball, more than half its radius beside it. */
const BESIDE = 8;

const at = (frame: number) => {
  const x = 100 + Math.log1p(DRAG * SPEED * (frame - FROM)) / DRAG;
  return frame < FROM || x > 388 ? null : ([x, 30] as const);
};

/** The second time a frame is measured, what goes along with the ball is found instead, but for the frames given. */
function misled(spared: readonly number[]): FrameMeasurer {
  const plain = scriptedMeasurer({ at, noise: 0.02 });
  const seen = new Set<number>();
  return {
    ...plain,
    centres: async (hints) => {
      const again = hints.map(({ frame }) => seen.has(frame.index));
      const numbers = hints.map(({ frame }) => frame.index);
      const found = await plain.centres(hints);
      for (const number of numbers) seen.add(number);
      return found.map((centre, i) =>
        centre.ok && again[i] && !spared.includes(numbers[i] as number)
          ? success({ ...centre.value, y: centre.value.y + BESIDE })
          : centre,
      );
    },
  };
}

const accepted = async (spared: readonly number[]) => {
  const timing = {
    source: 'recordingRate',
    recordingRate: { value: 10_000, u: 0.5 },
    exposure: { value: 5e-5, u: 1e-6 },
  };
  const given = inputs({ timing, ball: BALL });
  const { centres } = await measureFilm(given, film, misled(spared), () => undefined, going);
  return [...centres].map(([frame, centre]) => (centre.ok ? frame : centre.reason.code));
};

describe('two passes that follow different things', () => {
  it('leave no centre standing, not even the few that agree by chance', async () => {
    const found = await accepted([15, 20]);
    expect(found).toContain('lookDisagrees');
    expect(found.filter((one) => typeof one === 'number')).toEqual([]);
  });

  it('leave those standing that a good part of the frames agrees on', async () => {
    const most = Array.from({ length: 15 }, (_, i) => 10 + i);
    const found = await accepted(most);
    expect(found.filter((one) => typeof one === 'number')).toEqual(most);
  });
});
