import type { GreyFrame } from '../core/frame';
import { type Outcome, success } from '../core/reason';
import { buildBackground } from './background';
import { frameBack } from './moved';
import { createRegistrar, type Shift } from './registration';
import { varianceKept } from './resample';
import type { Background } from './types';

/** Shaking smaller than this leaves the background as sharp as it is, px. */
const LEAST_SHAKE = 0.05;
const ROUNDS = 2;

/**
 * The background of frames that may shake against each other. A background built from such frames is smeared: each is
 * put back to where the scene stands on average and the background built anew, twice. Failures: those of
 * `buildBackground`.
 */
export function steadyBackground(frames: readonly GreyFrame[]): Outcome<Background> {
  const rough = buildBackground(frames);
  if (!rough.ok) return rough;
  let background = rough.value;
  for (let round = 0; round < ROUNDS; round++) {
    const register = createRegistrar(background);
    const placed = frames.flatMap((frame) => {
      const shift = register(frame);
      return shift === null ? [] : [{ frame, shift }];
    });
    if (placed.length < Math.max(3, frames.length / 2)) return success(background);
    const shifts = placed.map(({ shift }) => shift);
    if (round === 0 && spread(shifts) < LEAST_SHAKE) return success(background);
    const [x, y] = middle(shifts);
    let kept = 0;
    const still = placed.map(({ frame, shift }) => {
      const off = [shift.x - x, shift.y - y] as const;
      kept += varianceKept(off) / placed.length;
      return frameBack(frame, off, [0, 0, frame.width, frame.height]);
    });
    const sharper = buildBackground(still);
    if (!sharper.ok) return success(background);
    const { noise } = sharper.value;
    background = {
      ...sharper.value,
      // Interpolating took some of the noise away.
      noise: { readVariance: noise.readVariance / kept, gain: noise.gain / kept },
      // Pixels that tell nothing stay where they are in the camera.
      ...(rough.value.faulty === undefined ? {} : { faulty: rough.value.faulty }),
    };
  }
  return success(background);
}

const middle = (shifts: readonly Shift[]): readonly [number, number] => [
  shifts.reduce((sum, { x }) => sum + x / shifts.length, 0),
  shifts.reduce((sum, { y }) => sum + y / shifts.length, 0),
];

/** Root-mean-square distance from the middle, the shifts' own uncertainty taken out. */
function spread(shifts: readonly Shift[]): number {
  const [x, y] = middle(shifts);
  const sum = shifts.reduce(
    (all, shift) => all + (shift.x - x) ** 2 + (shift.y - y) ** 2 - shift.varX - shift.varY,
    0,
  );
  return Math.sqrt(Math.max(0, sum / shifts.length));
}
