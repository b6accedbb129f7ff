import { ExitframeError } from '../core/reason';
import type { ImageVector } from '../core/units';
import { findCandidates } from '../image/candidates';
import { measureCentre } from '../image/centre';
import { frameGain } from '../image/gain';
import { inspectCentre } from '../image/inspect';
import { frameBack, isMoved } from '../image/moved';
import { loadVision, type Vision } from '../image/opencv/vision';
import { observeSeal } from '../seal/observe';
import { stillScene } from './stillScene';
import type { FrameMeasurer, SurveySetup, WatchedSeal } from './types';

/** A measurer that works in the calling thread. */
export function createMeasurer(): FrameMeasurer {
  let ready: {
    readonly setup: SurveySetup;
    readonly scene: ReturnType<typeof stillScene>;
    readonly vision: Vision;
  } | null = null;
  const prepared = () => {
    if (ready === null) throw new ExitframeError('notPrepared', 'The measurer has no setup yet.');
    return ready;
  };
  return {
    lanes: 1,
    async prepare(setup) {
      ready = { scene: stillScene(setup), setup, vision: ready?.vision ?? (await loadVision()) };
    },
    async survey(frames) {
      const { setup, scene, vision } = prepared();
      const { ball, seal, rear } = setup;
      return frames.map((frame) => {
        const shift = scene.shiftOf(frame);
        const off: ImageVector = shift === null ? [0, 0] : [shift.x, shift.y];
        const background = scene.rough(off);
        const gain = frameGain(frame, background);
        const observe = (watched: WatchedSeal | null) =>
          watched &&
          observeSeal(
            isMoved(off) ? frameBack(frame, off, watched.view.region) : frame,
            watched.reference,
            watched.view,
            vision.components,
          );
        return {
          frame: frame.index,
          candidates: findCandidates(frame, background, gain, ball, vision),
          seal: observe(seal),
          rear: observe(rear),
          gain,
          shift,
          launcher: scene.launcherOf(frame),
        };
      });
    },
    async centres(hints) {
      const { scene } = prepared();
      return hints.map(({ frame, at, shift, ball }) =>
        measureCentre(frame, scene.around(at, ball, shift), at, ball),
      );
    },
    async inspect({ frame, at, shift, ball }) {
      return inspectCentre(frame, prepared().scene.around(at, ball, shift), at, ball);
    },
  };
}
