import type { FrameRange } from '../../../src/core/film';
import type { GreyFrame } from '../../../src/core/frame';
import { seededRandom } from '../../../src/core/random';
import { failure, success } from '../../../src/core/reason';
import type { FrameMeasurer, ReductionEvent, ReductionInputs } from '../../../src/reduction/types';
import { validateShot } from '../../../src/shot/parse';
import type { Shot } from '../../../src/shot/schema';

export const WIDTH = 400;
const HEIGHT = 60;
export const RATE = 10_000;
const FRAMES = 40;
const RADIUS = 12;

/** A ball that crosses a still scene, told frame by frame instead of drawn. */
export interface Script {
  /** Where its centre is in a frame; null: not in view. */
  readonly at: (frame: number) => readonly [x: number, y: number] | null;
  /** Noise of the measured centres, px. */
  readonly noise?: number;
  /** How far the scene, ball and all, stands off in a frame, px; left out: it stands still. */
  readonly shake?: (frame: number) => readonly [x: number, y: number];
  /** Whether the measurer sees it do so; it does unless said. */
  readonly shakeSeen?: boolean;
  /** The same of the launcher, against the scene. */
  readonly recoil?: (frame: number) => number;
}

/** Standard uncertainty of a scripted shift, px each way. */
const SHIFT_U = 0.01;

/** Drag of a 30 mm, 1.9 g ball with a drag coefficient of 0.5 in air, per pixel of path at 1.25 mm a pixel. */
const DRAG = 1.4e-4;

/** A path along the frame from the muzzle at x = 100, slowed by drag; speed in px a frame at the muzzle. */
export const slowing =
  (speed: number, from: number) =>
  (frame: number): readonly [number, number] | null => {
    const x = 100 + Math.log1p(DRAG * speed * (frame - from)) / DRAG;
    return x > WIDTH - RADIUS || frame < from ? null : [x, 30];
  };

const still: GreyFrame['data'] = Uint8Array.from(
  { length: WIDTH * HEIGHT },
  (_, p) => 60 + (p % 7),
);

/** Frames of a still scene: nothing reads the ball off them, the scripted measurer knows it. */
const filmOf = (scene: GreyFrame['data']) => ({
  async *frames({ start, end, step = 1 }: FrameRange): AsyncGenerator<GreyFrame> {
    for (let index = start; index < Math.min(end, FRAMES); index += step) {
      yield { index, width: WIDTH, height: HEIGHT, data: scene.slice(), white: 255 };
    }
  },
  /** Whoever uses it all the same sees something else. */
  done({ data }: GreyFrame) {
    data.fill(255);
  },
});

export const film = filmOf(still);

/** The same with pixels that always show white. */
export const filmWithHot = (pixels: readonly (readonly [x: number, y: number])[]) => {
  const scene = still.slice();
  for (const [x, y] of pixels) scene[y * WIDTH + x] = 255;
  return filmOf(scene);
};

export function scriptedMeasurer({
  at,
  noise = 0.05,
  shake = () => [0, 0],
  shakeSeen = true,
  recoil = () => 0,
}: Script): FrameMeasurer & { readonly setups: number } {
  let setups = 0;
  const seen = (frame: number) => {
    const place = at(frame);
    const [dx, dy] = shake(frame);
    return place === null ? null : ([place[0] + dx, place[1] + dy] as const);
  };
  const placed = (frame: number, alongX: number) => {
    const random = seededRandom(6, frame);
    const [dx, dy] = shakeSeen ? shake(frame) : [0, 0];
    return {
      x: dx + alongX + SHIFT_U * random.normal(),
      y: dy + SHIFT_U * random.normal(),
      varX: SHIFT_U ** 2,
      varY: SHIFT_U ** 2,
      covXY: 0,
    };
  };
  return {
    lanes: 2,
    get setups() {
      return setups;
    },
    prepare: async () => {
      setups++;
    },
    survey: async (frames) =>
      frames.map(({ index }) => {
        const place = seen(index);
        return {
          frame: index,
          candidates: place === null ? [] : [{ x: place[0], y: place[1], score: 0.9, visible: 1 }],
          seal: null,
          rear: null,
          gain: 1,
          shift: placed(index, 0),
          launcher: placed(index, recoil(index)),
        };
      }),
    centres: async (hints) =>
      hints.map(({ frame }) => {
        const place = seen(frame.index);
        if (place === null) return failure('noBall', 'No ball here.');
        const random = seededRandom(5, frame.index);
        return success({
          x: place[0] + noise * random.normal(),
          y: place[1] + noise * random.normal(),
          varX: noise ** 2,
          varY: noise ** 2,
          covXY: 0,
          radius: { value: RADIUS, u: 0.1 },
          visible: 1,
          contrast: 100,
          saturated: 0,
        });
      }),
    inspect: async () => {
      throw new Error('A scripted film has no pixels to inspect.');
    },
  };
}

export function inputs(change: Record<string, unknown> = {}): ReductionInputs {
  const shot = validateShot({
    format: 'exitframe-shot',
    version: 5,
    name: '2031-05-02 A',
    footage: { path: 'clip.avi', sha256: null },
    timing: {
      source: 'recordingRate',
      recordingRate: { value: RATE, u: 0.5 },
      exposure: { value: 1e-5, u: 1e-6 },
    },
    scale: {
      lengths: [{ from: [50, 50], to: [350, 50], length: 0.375, u: 1e-4 }],
      cameraDistance: { value: 1.5, u: 0.02 },
    },
    muzzle: { point: [100, 30], u: 0.5, axis: null },
    seals: null,
    ...change,
  });
  if (!shot.ok) throw new Error(shot.reason.message);
  return inputsOf(shot.value);
}

const inputsOf = (shot: Shot): ReductionInputs => ({
  shot,
  info: {
    name: 'clip.avi',
    container: 'avi',
    codec: 'mjpeg',
    width: WIDTH,
    height: HEIGHT,
    frameCount: FRAMES,
    playbackRate: 30,
    rotation: 0,
    bitDepth: 8,
    pixelAspect: 1,
    hasAudio: false,
    interlaced: { stated: null, separated: null },
    levels: { black: 0, white: 255 },
    decoder: { name: 'none', why: { code: 'none', message: 'scripted' } },
  },
  timestamps: null,
  footageSha256: null,
  audio: null,
});

export const going = { aborted: false, throwIfAborted: () => undefined };

export function recorder(): { events: ReductionEvent[]; onEvent: (event: ReductionEvent) => void } {
  const events: ReductionEvent[] = [];
  return { events, onEvent: (event) => events.push(event) };
}
