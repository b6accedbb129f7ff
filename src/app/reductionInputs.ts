import { soundIfDecodable } from '../core/audio';
import type { Reduction, ReductionInputs } from '../reduction/types';
import type { Shot } from '../shot/schema';
import { setupKey } from '../shot/setup';
import type { createFilmStore, OpenFilm } from './filmStore';
import type { SetupSceneStore } from './setupScenes';

/** What a reduction is given besides the shot, and what of its outcome later shots are held against. */
export const reductionInputs = (
  films: Pick<ReturnType<typeof createFilmStore>, 'audio'>,
  scenes: SetupSceneStore,
) => ({
  async inputsOf(shot: Shot, film: Omit<OpenFilm, 'files'>): Promise<ReductionInputs> {
    const { info, timestamps, sha256 } = film;
    const audio =
      shot.sound !== null && info.hasAudio ? await soundIfDecodable(() => films.audio()) : null;
    const setup = setupKey(shot);
    const setupScene = setup === null ? null : scenes.find(setup, sha256);
    return { shot, info, timestamps, footageSha256: sha256, audio, setupScene };
  },
  /** What later shots of this setup are compared with. */
  keepScene(shot: Shot, { fingerprint, result }: Reduction) {
    const setup = setupKey(shot);
    if (setup === null) return;
    const scene = { shotName: shot.name, fingerprint };
    scenes.keep(setup, scene, result.footageSha256, Date.now());
  },
});
