import { signal } from '@preact/signals';
import type { GreyFrame } from '../core/frame';
import type { LensCalibration } from '../core/lens';
import { orThrow } from '../core/reason';
import type { ImagePoint } from '../core/units';
import type { BoardAnswer, CalibrateApi, LampAnswer } from '../protocol/calibrate';
import { stoppedBy, type ThreadFault } from '../protocol/threadFault';
import type { LampQuestion } from '../reduction/calibrateClock';
import type { MarkedEdge } from '../reduction/calibrateLens';
import type { Calibrator, StartCalibrator } from './crew';
import { sortFiles } from './footageFiles';
import type { LensOrigin } from './lens';
import { createTask } from './task';

/** What the boards told, with the file name of each picture; null: a frame of a clip. */
export interface BoardsFound extends BoardAnswer {
  readonly names: readonly (string | null)[];
}

type BoardSize = NonNullable<Parameters<Calibrator['lensFromBoards']>[1]>;

/** Calibrations from footage other than the shot's: each in a thread of its own, the shot's film untouched. */
export function createCalibration(start: StartCalibrator) {
  const lamp = createTask<LampAnswer, CalibrateApi>(start, calibrationStopped);
  const boards = createTask<BoardsFound, CalibrateApi>(start, calibrationStopped);
  const edges = createTask<LensCalibration, CalibrateApi>(start, calibrationStopped);
  /** Edges marked on the film for the lens; marks to work with, no part of the shot. */
  const marked = signal<readonly MarkedEdge[]>([]);
  /** Where the lens in use came from, as far as this session knows. */
  const origin = signal<LensOrigin | null>(null);

  /** What was found of the edges before holds no longer. */
  const mark = (next: readonly MarkedEdge[]) => {
    marked.value = next;
    edges.reset();
  };
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
    /** The lens from a clip or stills of a chessboard. */
    boards: {
      state: boards.state,
      cancel: boards.cancel,
      async measure(chosen: readonly File[], size: BoardSize | null) {
        const sorted = sortFiles(chosen);
        if (!sorted.ok) return boards.refuse(sorted.reason);
        const { footage } = sorted.value;
        await boards.run(async (thread, onShare) => {
          const answer = await thread.lensFromBoards(footage, size, onShare);
          const names = answer.pictures.map(({ frame: { index } }) =>
            footage.length > 1 ? (footage[index]?.name ?? '') : null,
          );
          return { ...answer, names };
        });
      },
    },
    /** The lens from edges marked in one frame of the film. */
    edges: {
      state: edges.state,
      cancel: edges.cancel,
      marked,
      add: (edge: MarkedEdge) => mark([...marked.value, edge]),
      move: (index: number, from: ImagePoint, to: ImagePoint) =>
        mark(marked.value.map((one, i) => (i === index ? [from, to] : one))),
      remove: (index: number) => mark(marked.value.filter((_, i) => i !== index)),
      measure: (frame: GreyFrame) =>
        edges.run(async (thread) => orThrow(await thread.lensFromEdges(frame, marked.value))),
    },
    origin,
    /** For another film. */
    reset() {
      lamp.reset();
      boards.reset();
      mark([]);
      origin.value = null;
    },
  };
}

export const calibrationStopped = (fault: ThreadFault) =>
  stoppedBy(
    'calibrationStopped',
    'The thread that calibrated stopped.',
    fault,
    'Try again, with fewer or smaller pictures.',
  );
