import { ExitframeError } from '../core/reason';
import { findCandidates } from '../image/candidates';
import { measureCentre } from '../image/centre';
import { frameGain } from '../image/gain';
import { inspectCentre } from '../image/inspect';
import { loadVision, type Vision } from '../image/opencv';
import { readStreak } from '../image/streak';
import { observeSeal } from '../seal/observe';
import type { FrameMeasurer, SurveySetup } from './types';

/** A measurer that works in the calling thread. */
export function createMeasurer(): FrameMeasurer {
  let ready: { readonly setup: SurveySetup; readonly vision: Vision } | null = null;
  const prepared = () => {
    if (ready === null) throw new ExitframeError('notPrepared', 'The measurer has no setup yet.');
    return ready;
  };
  return {
    lanes: 1,
    async prepare(setup) {
      ready = { setup, vision: ready?.vision ?? (await loadVision()) };
    },
    async survey(frames) {
      const { setup, vision } = prepared();
      return frames.map((frame) => ({
        frame: frame.index,
        streak: readStreak(frame, setup.streak),
        candidates: findCandidates(frame, setup.background, setup.ball, vision),
        seal:
          setup.seal === null
            ? null
            : observeSeal(frame, setup.seal.reference, setup.seal.view, vision.components),
        gain: frameGain(frame, setup.background),
        shift: null,
      }));
    },
    async centres(hints, ball) {
      const { setup } = prepared();
      return hints.map(({ frame, at }) => measureCentre(frame, setup.background, at, ball));
    },
    async inspect({ frame, at }, ball) {
      return inspectCentre(frame, prepared().setup.background, at, ball);
    },
  };
}
