import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { ExitframeError, orThrow, reasonOf } from '../core/reason';
import type { SetupScene } from '../reduction/setupScene';
import { isRecord } from '../shot/issues';
import { setupKey } from '../shot/setup';
import { parseSetup, SETUP_FORMAT } from '../shot/setupFile';
import { sceneOf } from './reduceFile';
import { findFootage, readShot } from './shotFiles';

/** The still scene that the shots of a setup are held against, and the shot or setup file it comes from. */
export interface GivenScene {
  readonly from: string;
  readonly scene: SetupScene;
}

/**
 * Scenes of the shot and setup files given, by `setupKey`; the first of each setup counts. Throws `ExitframeError`
 * naming the file: as `readShot`, `findFootage`, `sceneOf` and `parseSetup`, `noSetup`, `setupWithoutScene`.
 */
export async function givenScenes(files: readonly string[]): Promise<Map<string, GivenScene>> {
  const scenes = new Map<string, GivenScene>();
  for (const file of files) {
    try {
      const { key, scene } = await givenScene(file);
      if (!scenes.has(key)) scenes.set(key, { from: resolve(file), scene: await scene() });
    } catch (error) {
      const { code, message, remedy } = reasonOf(error);
      throw new ExitframeError(code, `--setup-from ${file}: ${message}`, remedy);
    }
  }
  return scenes;
}

async function givenScene(file: string) {
  const setup = await setupIn(file);
  if (setup !== null) {
    const { id, scale, muzzle, scene } = orThrow(parseSetup(setup));
    if (scene === null) {
      throw new ExitframeError(
        'setupWithoutScene',
        'The setup file holds no still scene: its shot was not measured when it was saved.',
        'Give a shot of the setup instead.',
      );
    }
    return { key: keyOf({ setupId: id, scale, muzzle }), scene: async () => scene };
  }
  const shot = await readShot(file);
  return { key: keyOf(shot), scene: async () => sceneOf(shot, await findFootage(shot, file)) };
}

/** The file's text if it is a setup file. */
async function setupIn(file: string): Promise<string | null> {
  try {
    const text = await readFile(file, 'utf8');
    const data: unknown = JSON.parse(text);
    return isRecord(data) && data.format === SETUP_FORMAT ? text : null;
  } catch {
    // Reading it as a shot file will say what is wrong.
    return null;
  }
}

function keyOf(shot: Parameters<typeof setupKey>[0]): string {
  const key = setupKey(shot);
  if (key !== null) return key;
  throw new ExitframeError(
    'noSetup',
    'The shot names no setup, so no other shot can be held against it.',
    'Give the shots that were filmed from one place the same "setupId".',
  );
}
