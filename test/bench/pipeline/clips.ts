import { closeSync, existsSync, mkdirSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { clips } from '../../../sample-clips/render/clips';
import { Film } from '../../../sample-clips/render/exposure';
import { bytesOf, run } from '../../../sample-clips/render/ffmpeg';
import { randomStream } from '../../../sample-clips/render/random';
import type { ClipSpec } from '../../../sample-clips/render/scenario';
import { read, STUDIO, TWELVE_IN_SIXTEEN } from '../../../sample-clips/render/sensor';
import { shotFile } from '../../../sample-clips/render/shotfile';
import { type Stage, setStage } from '../../../sample-clips/render/stage';

/** A clip of the bench: a file, the shot it shows, and the size of its frames. */
export interface BenchClip {
  readonly label: string;
  readonly path: string;
  readonly width: number;
  readonly height: number;
  readonly frames: number;
  /** Of a grey value: 8 or 16. */
  readonly bits: 8 | 16;
  /** As a shot file states it, the footage's hash left out. */
  readonly shot: object;
}

/** How a rendered film is written: the encoder's arguments, and whether from its 16-bit frames. */
interface Coding {
  readonly label: string;
  readonly file: string;
  readonly sixteen?: boolean;
  readonly args: readonly string[];
}

const H264: Coding = {
  label: 'H.264',
  file: 'h264.mp4',
  args: [
    ...['-c:v', 'libx264', '-preset', 'fast', '-crf', '11', '-g', '250'],
    ...['-pix_fmt', 'yuv420p', '-color_range', 'tv', '-movflags', '+faststart'],
  ],
};
const CODINGS: readonly Coding[] = [
  H264,
  {
    label: 'VP9',
    file: 'vp9.webm',
    args: [
      ...['-c:v', 'libvpx-vp9', '-b:v', '0', '-crf', '10', '-deadline', 'realtime'],
      ...[
        '-cpu-used',
        '7',
        '-row-mt',
        '1',
        '-g',
        '250',
        '-pix_fmt',
        'yuv420p',
        '-color_range',
        'tv',
      ],
    ],
  },
  {
    label: 'Motion-JPEG',
    file: 'mjpeg.avi',
    args: ['-c:v', 'mjpeg', '-q:v', '2', '-pix_fmt', 'yuvj420p'],
  },
  {
    label: 'FFV1, 16 bit',
    file: 'ffv1.mkv',
    sixteen: true,
    args: ['-c:v', 'ffv1', '-level', '3', '-slices', '4', '-pix_fmt', 'gray16le'],
  },
];

const [SHOT] = clips as readonly [ClipSpec, ...ClipSpec[]];
/** The seal is at rest before its bulge begins, and everything again so many frames after the exit. */
const STILL_BEFORE = 2;
const STILL_AFTER = 400;

/** The first sample clip's shot in the middle of a film of `frames` frames, its scene drawn `scale` times as large. */
function specOf(width: number, height: number, frames: number, scale: number): ClipSpec {
  const [mx, my] = SHOT.launcher.muzzle;
  const [bx, by] = SHOT.bar.centre;
  return {
    ...SHOT,
    image: { width, height, rotation: 0 },
    frames,
    exitFrame: Math.floor(frames / 2),
    camera: { ...SHOT.camera, metresPerPixel: SHOT.camera.metresPerPixel / scale },
    launcher: { ...SHOT.launcher, muzzle: [mx * scale, my * scale] },
    bar: { ...SHOT.bar, centre: [bx * scale, by * scale] },
  };
}

/** Writes the raw frames of a film into files: 8 bits, and 16 where asked. */
function writeRaw(stage: Stage, eight: string, sixteen: string | null): void {
  const { spec, truth } = stage;
  const noise = randomStream(spec.seed, 'noise');
  const camera = new Film(stage);
  const sensor = { fullWell: spec.camera.fullWell, readNoise: spec.camera.readNoise };
  const size = spec.image.width * spec.image.height;
  const [small, large] = [new Uint8Array(size), new Uint16Array(size)];
  const files = [openSync(eight, 'w'), ...(sixteen === null ? [] : [openSync(sixteen, 'w')])];
  const first = Math.floor(truth.onsetTime * truth.rate) - STILL_BEFORE;
  const last = Math.ceil(truth.exitTime * truth.rate) + STILL_AFTER;
  let radiance = camera.frame(0);
  for (let i = 0; i < spec.frames; i++) {
    if (i >= first && i <= last) radiance = camera.frame(i);
    writeSync(files[0] as number, read({ ...sensor, ...STUDIO }, radiance, noise, small));
    if (files[1] !== undefined) {
      const codes = read({ ...sensor, ...TWELVE_IN_SIXTEEN }, radiance, noise, large);
      writeSync(files[1], bytesOf(codes));
    }
  }
  for (const file of files) closeSync(file);
}

/**
 * The shot filmed once and coded in each way, in a folder kept between runs: rendering takes minutes. Needs a native
 * ffmpeg.
 */
async function renderClips(
  folder: string,
  spec: ClipSpec,
  codings: readonly Coding[],
): Promise<BenchClip[]> {
  const { width, height } = spec.image;
  const stage = setStage(spec);
  const made = codings.map(
    ({ label, file, sixteen }): BenchClip => ({
      label,
      path: join(folder, file),
      ...{ width, height, frames: spec.frames, bits: sixteen === true ? 16 : 8 },
      shot: shotFile(stage, [file], null),
    }),
  );
  if (made.every(({ path }) => existsSync(path))) return made;
  mkdirSync(folder, { recursive: true });
  const [eight, twice] = [join(folder, 'eight.raw'), join(folder, 'sixteen.raw')];
  writeRaw(stage, eight, codings.some((one) => one.sixteen === true) ? twice : null);
  for (const { file, args, sixteen: isSixteen = false } of codings) {
    const target = join(folder, file);
    const part = join(folder, `part-${file}`);
    await run(
      [
        ...['-f', 'rawvideo', '-pix_fmt', isSixteen ? 'gray16le' : 'gray'],
        ...['-color_range', 'tv', '-s', `${width}x${height}`, '-framerate', '30'],
        ...['-i', isSixteen ? twice : eight],
        // The grey values are luma as coded: no conversion of range on the way into the planes.
        ...(isSixteen ? [] : ['-vf', 'scale=in_range=tv:out_range=tv']),
        ...args,
        ...['-y', part],
      ],
      [],
    );
    renameSync(part, target);
  }
  for (const raw of [eight, twice]) rmSync(raw, { force: true });
  return made;
}

const CACHE = 'node_modules/.cache/bench';

/** 1280 x 256, 2000 frames, in four codings. */
export const wideClips = (): Promise<BenchClip[]> =>
  renderClips(join(CACHE, 'wide'), specOf(1280, 256, 2000, 1), CODINGS);

/** The same shot at other lengths and sizes, H.264: what cost grows with. */
export const clipOf = async (width: number, height: number, frames: number): Promise<BenchClip> => {
  const folder = join(CACHE, `${width}x${height}x${frames}`);
  const [clip] = await renderClips(folder, specOf(width, height, frames, width / 1024), [H264]);
  return clip as BenchClip;
};

/** 512 x 128, 20 000 frames. */
export const longClip = (): Promise<BenchClip> => clipOf(512, 128, 20_000);
