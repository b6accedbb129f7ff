import { encode } from './encode';
import { Film } from './exposure';
import { randomStream } from './random';
import { FULL, read, STUDIO, TWELVE_IN_SIXTEEN } from './sensor';
import { arrivals, soundTrack } from './sound';
import type { Stage } from './stage';
import { timeAt } from './truthfile';

/** The footage of a stage, written into a folder; gives its file names in order, and the size of a coded frame. */
export async function renderFootage(
  stage: Stage,
  folder: string,
): Promise<{ readonly files: string[]; readonly width: number; readonly height: number }> {
  const { spec } = stage;
  const turned = spec.image.rotation === 90;
  const width = turned ? spec.image.height : spec.image.width;
  const height = turned ? spec.image.width : spec.image.height;
  const files = await encode(
    spec,
    {
      width,
      height,
      frames: filmFrames(stage),
      rotation: spec.image.rotation,
      times: spec.unevenFrames > 0 ? stage.times : null,
      sound: sound(stage),
    },
    folder,
  );
  return { files, width, height };
}

/** The frames as coded, turned as the sensor was held. */
export function filmFrames(stage: Stage): (Uint8Array | Uint16Array)[] {
  const { spec } = stage;
  const noise = randomStream(spec.seed, 'noise');
  const camera = new Film(stage);
  const { kind } = spec.coding;
  const codes = kind === 'png' ? TWELVE_IN_SIXTEEN : kind === 'avi' ? FULL : STUDIO;
  const sensor = { ...codes, fullWell: spec.camera.fullWell, readNoise: spec.camera.readNoise };
  return Array.from({ length: spec.frames }, (_, i) => {
    const radiance = camera.frame(i);
    if (kind === 'png') return read(sensor, radiance, noise, new Uint16Array(radiance.length));
    const upright = read(sensor, radiance, noise, new Uint8Array(radiance.length));
    return spec.image.rotation === 90 ? asCoded(upright, spec.image.width) : upright;
  });
}

/** The frame as a sideways-held sensor codes it: a quarter turn clockwise makes it upright again. */
function asCoded(upright: Uint8Array, width: number): Uint8Array {
  const height = upright.length / width;
  const coded = new Uint8Array(upright.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      coded[(width - 1 - x) * height + y] = upright[y * width + x] as number;
    }
  }
  return coded;
}

function sound(stage: Stage): Float32Array | null {
  const { spec, truth } = stage;
  if (!spec.sound) return null;
  const impact = timeAt(stage, truth.backstop - truth.ballRadius);
  const seconds = Math.max((stage.times[spec.frames - 1] as number) + 0.01, impact + 0.06);
  return soundTrack(arrivals(truth, impact), seconds, randomStream(spec.seed, 'sound'));
}
