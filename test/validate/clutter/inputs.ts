import type { ReductionInputs } from '../../../src/reduction/types';
import type { FrameSupply } from '../../../src/reduction/work';
import { validateShot } from '../../../src/shot/parse';
import type { ClutteredFilm } from './film';

/** m; the scenario's ball. */
const BALL_DIAMETER = 0.03;

/** The film's frames, from memory. */
export function supplyOf({ frames, width, height }: ClutteredFilm): FrameSupply {
  return {
    async *frames({ start, end, step = 1 }) {
      for (let index = start; index < Math.min(end, frames.length); index += step) {
        const data = frames[index] as Uint8Array;
        yield { index, width, height, data, white: 255 };
      }
    },
  };
}

/** What a person would state of the film; where the ball flies is left to be found. */
export function inputsOf(film: ClutteredFilm): ReductionInputs {
  const { width, height, radius, framesPerSecond, exposure, muzzle, frames } = film;
  const shot = validateShot({
    format: 'exitframe-shot',
    version: 3,
    name: 'rendered with clutter',
    footage: { path: 'clip.avi', sha256: null },
    timing: {
      source: 'recordingRate',
      recordingRate: { value: framesPerSecond, u: 5e-5 * framesPerSecond },
      exposure: { value: exposure / framesPerSecond, u: (0.02 * exposure) / framesPerSecond },
    },
    scale: {
      lengths: [
        {
          from: [10, height - 12],
          to: [width - 10, height - 12],
          length: ((width - 20) * BALL_DIAMETER) / (2 * radius),
          u: 1e-4,
        },
      ],
    },
    ball: { diameter: { value: BALL_DIAMETER, u: 5e-5 }, mass: { value: 0.0019, u: 1e-5 } },
    // The direction of travel is not stated: it is found from the path.
    muzzle: { point: muzzle, u: 0.5, axis: null },
    seals: null,
  });
  if (!shot.ok) throw new Error(shot.reason.message);
  return {
    shot: shot.value,
    info: {
      name: 'clip.avi',
      container: 'avi',
      codec: 'rawvideo',
      width,
      height,
      frameCount: frames.length,
      playbackRate: 30,
      rotation: 0,
      bitDepth: 8,
      pixelAspect: 1,
      hasAudio: false,
      interlaced: { stated: null, separated: null },
      levels: { black: 0, white: 255 },
      decoder: { name: 'none', why: { code: 'none', message: 'rendered in memory' } },
    },
    timestamps: null,
    footageSha256: null,
    audio: null,
  };
}
