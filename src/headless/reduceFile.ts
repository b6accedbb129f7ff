import { soundIfDecodable } from '../core/audio';
import { nodePlatform } from '../footage/node';
import { openFootage } from '../footage/open';
import type { FrameSource } from '../footage/source';
import { createMeasurer } from '../reduction/measurer';
import { readFingerprint } from '../reduction/readFingerprint';
import { reduceShot } from '../reduction/reduceShot';
import type { SetupScene } from '../reduction/setupScene';
import type { Reduction } from '../reduction/types';
import type { Shot } from '../shot/schema';
import { findFootage, readShot, type ShotFootage } from './shotFiles';

/** Nobody watches, nobody cancels. */
const unwatched = () => ({ onEvent: () => {}, cancellation: new AbortController().signal });

async function withFilm<T>(
  shot: Shot,
  { files }: ShotFootage,
  use: (film: FrameSource) => Promise<T>,
): Promise<T> {
  const film = await openFootage(files, nodePlatform, { reading: shot.footage.reading });
  try {
    return await use(film);
  } finally {
    await film.close();
  }
}

/**
 * Reduces one shot, its still scene held against that of another shot of the setup. Throws `ExitframeError`: the
 * reasons of opening and decoding footage, and where the shot does not fit it.
 */
export const reduceFootage = (
  shot: Shot,
  footage: ShotFootage,
  setupScene: SetupScene | null,
): Promise<Reduction> =>
  withFilm(shot, footage, async (film) => {
    const inputs = {
      shot,
      info: film.info,
      timestamps: await film.timestamps(),
      footageSha256: footage.sha256,
      audio: shot.sound === null ? null : await soundIfDecodable(() => film.audio()),
      setupScene,
    };
    const { onEvent, cancellation } = unwatched();
    return reduceShot(inputs, film, createMeasurer(), onEvent, cancellation);
  });

/** The still scene that reducing the shot would give, without reducing it. Throws as `reduceFootage`. */
export const sceneOf = (shot: Shot, footage: ShotFootage): Promise<SetupScene> =>
  withFilm(shot, footage, async (film) => ({
    shotName: shot.name,
    fingerprint: await readFingerprint({ inputs: film, film, ...unwatched() }),
  }));

/** Reduces one shot file by itself. Throws as `readShot`, `findFootage` and `reduceFootage`. */
export async function reduceFile(path: string): Promise<Reduction> {
  const shot = await readShot(path);
  return reduceFootage(shot, await findFootage(shot, path), null);
}
