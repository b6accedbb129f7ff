import { fingerprintOf, type SceneFingerprint } from '../image/sceneFingerprint';
import { readBackground, type ScenePass } from './background';

/** The still scene's fingerprint that measuring the film would give, without measuring it. */
export const readFingerprint = async (pass: ScenePass): Promise<SceneFingerprint> =>
  fingerprintOf(await readBackground(pass));
