import { filmFrames } from '../../sample-clips/render/footage';
import type { ClipSpec } from '../../sample-clips/render/scenario';
import { shotFile } from '../../sample-clips/render/shotfile';
import { type Stage, setStage } from '../../sample-clips/render/stage';
import type { FootageInfo, FrameRange } from '../../src/core/film';
import type { GreyFrame } from '../../src/core/frame';
import { createMeasurer } from '../../src/reduction/measurer';
import { reduceShot } from '../../src/reduction/reduceShot';
import { validateShot } from '../../src/shot/parse';
import type { Result } from '../../src/shot/result';
import type { Shot } from '../../src/shot/schema';

/** A rendered scene: its film in memory, and the shot as a careful person would state it. */
export interface Scene {
  readonly stage: Stage;
  readonly frames: readonly GreyFrame[];
  readonly shot: Shot;
}

export function renderScene(spec: ClipSpec): Scene {
  const stage = setStage(spec);
  const { width, height } = spec.image;
  const frames = filmFrames(stage).map((data, index) => ({
    index,
    width,
    height,
    data,
    white: 255,
  }));
  const checked = validateShot(shotFile(stage, ['frames in memory'], null));
  if (!checked.ok) throw new Error(checked.reason.message);
  return { stage, frames, shot: checked.value };
}

/** The scene with frames after one of them missing, as if the camera had lost them. */
export const withoutFrames = (scene: Scene, after: number, count: number): Scene => ({
  ...scene,
  frames: scene.frames
    .filter(({ index }) => index <= after || index > after + count)
    .map((frame, index) => ({ ...frame, index })),
});

/** Reduces a scene with a shot as stated, by the same core as page and command. */
export async function reduceScene({ frames, stage }: Scene, shot: Shot): Promise<Result> {
  const { width, height } = stage.spec.image;
  const info: FootageInfo = {
    name: shot.name,
    container: 'memory',
    codec: 'grey',
    ...{ width, height, frameCount: frames.length },
    playbackRate: null,
    rotation: 0,
    bitDepth: 8,
    pixelAspect: 1,
    hasAudio: false,
    interlaced: { stated: null, separated: null },
    levels: { black: 0, white: 255 },
    decoder: { name: 'none', why: { code: 'none', message: 'the frames are in memory' } },
  };
  const film = {
    async *frames({ start, end, step = 1 }: FrameRange) {
      for (let i = start; i < end; i += step) yield frames[i] as GreyFrame;
    },
  };
  const inputs = { shot, info, timestamps: null, footageSha256: null, audio: null };
  const { signal } = new AbortController();
  const { result } = await reduceShot(inputs, film, createMeasurer(), () => {}, signal);
  return result;
}
