import type { LampAnswer } from '../protocol/calibrate';
import type { LampQuestion } from '../reduction/calibrateClock';
import type { StartCalibrator } from './crew';
import { sortFiles } from './footageFiles';
import { createTask } from './task';

/** Calibrations from footage other than the shot's: each in a thread of its own, the shot's film untouched. */
export function createCalibration(start: StartCalibrator) {
  const lamp = createTask<LampAnswer>(start);
  return {
    /** The rolling shutter's line time from a clip of a lamp. */
    lamp: {
      state: lamp.state,
      cancel: lamp.cancel,
      async measure(chosen: readonly File[], question: LampQuestion) {
        const sorted = sortFiles(chosen);
        if (!sorted.ok) return lamp.refuse(sorted.reason);
        const { footage } = sorted.value;
        await lamp.run((thread, onShare) => thread.lineTime(footage, question, onShare));
      },
    },
    /** For another film. */
    reset() {
      lamp.reset();
    },
  };
}
