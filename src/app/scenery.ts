import { computed, effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import type { GreyFrame } from '../core/frame';
import type { Reason } from '../core/reason';
import { provisionalAxis } from '../geometry/flightLine';
import { stoppedBy, type ThreadFault } from '../protocol/threadFault';
import type { LookPart, LookQuestion } from '../reduction/lookThrough';
import type { Scenery, StartThread } from './crew';
import type { ShotDraft } from './draft';
import type { OpenFilm } from './filmStore';
import { type FlightChoice, flightFrames } from './flightFrames';
import type { createMeasuring, LiveStreak } from './measuring';
import type { createReadings } from './readings';
import type { StillScene } from './resultTypes';
import { KeptRows } from './streakRows';
import { createTask } from './task';

/** The band of the streak image before ball and scale are known: this share of the picture's shorter side. */
const BAND_SHARE = 1 / 40;
/** The measured streak image's band, as a share of the ball's radius. */
const BALL_BAND = 0.5;
/** A pause in moving the muzzle before the streak image is read again, ms. */
const LOOK_AFTER_MS = 400;

/** A streak image, and small pictures of the film, spread evenly over it. */
const NO_LOOK: LiveStreak & { readonly pictures: readonly GreyFrame[] } = {
  line: null,
  rows: new KeptRows(),
  version: 0,
  pictures: [],
};

interface Around {
  readonly film: ReadonlySignal<OpenFilm | null>;
  readonly draft: ReadonlySignal<ShotDraft | null>;
  readonly measuring: ReturnType<typeof createMeasuring>;
  readonly readings: ReturnType<typeof createReadings>;
}

/**
 * Pictures of the film as a whole, each made in a thread of its own: small ones and a first streak image as soon as it
 * is open, the still scene and the whole flight when asked for.
 */
export function createScenery(
  start: StartThread<Scenery>,
  { film, draft, measuring, readings }: Around,
  tell: (reason: Reason) => void,
) {
  const look = signal(NO_LOOK);
  // Nobody asked for it, so nothing else says why the pictures end.
  const looking = createTask<null, Scenery>(start, (fault) => {
    const reason = stopped(fault);
    tell(reason);
    return reason;
  });
  const still = createTask<StillScene, Scenery>(start, stopped);
  const flight = createTask<GreyFrame, Scenery>(start, stopped);
  /** The question last answered, or being answered. */
  let looked = '';
  /** Whether that ended before its pictures were all there. */
  let isCutShort = false;
  /** Grows where what was under way has to be begun again. */
  const begun = signal(0);

  const take = ({ line, rows, small }: LookPart, first: boolean) => {
    const before = look.value;
    const filled = first ? new KeptRows() : KeptRows.of(before.rows);
    for (const { frame, row } of rows) filled.set(frame, row);
    look.value = {
      line,
      rows: filled.bounded(),
      version: before.version + 1,
      pictures: first ? small : [...before.pictures, ...small],
    };
  };
  const lookAgain = (question: LookQuestion, name: string) => {
    looked = name;
    isCutShort = false;
    let first = true;
    void looking.run(async (thread, onShare) => {
      await thread.lookThrough(question, (part) => {
        if (looked !== name) return;
        take(part, first);
        first = false;
        onShare(part.share);
      });
      return null;
    });
  };
  const question = (): { readonly ask: LookQuestion; readonly name: string } | null => {
    const open = film.value;
    if (open === null) return null;
    const { width, height } = open.info;
    const { muzzle = null, ball } = draft.value ?? {};
    const scale = readings.scale.value;
    const radius = scale?.ok && ball ? ball.diameter.value / 2 / scale.value.value : null;
    const origin = muzzle?.point ?? ([(width - 1) / 2, (height - 1) / 2] as const);
    const along = width >= height ? ([1, 0] as const) : ([0, 1] as const);
    const streak = {
      origin,
      axis: muzzle === null ? along : (muzzle.axis ?? provisionalAxis(origin, width, height)),
      halfWidth: Math.max(
        1,
        Math.round(radius === null ? BAND_SHARE * Math.min(width, height) : BALL_BAND * radius),
      ),
    };
    const { info, files } = open;
    return {
      ask: { info, streak },
      name: JSON.stringify([info, files.map(({ name, blob }) => [name, blob.size]), streak]),
    };
  };

  /** Ends the look that goes on; it is begun anew when there is time for it. */
  const breakOff = () => {
    if (looking.state.value.kind === 'running') {
      looked = '';
      isCutShort = true;
    }
    looking.cancel();
  };

  // Measuring reads the film itself, and wants the cores and the memory.
  const stopLooking = effect(() => {
    const running = measuring.status.value.kind === 'running';
    const measured = measuring.streak.value.line !== null;
    const passed = measuring.status.value.kind === 'done' && measuring.pictures.value.length > 0;
    const next = question();
    begun.value;
    return untracked(() => {
      if (running) return breakOff();
      if (next === null || next.name === looked) return;
      const looksWhole = look.value.pictures.length > 0 && !isCutShort;
      if (measured && (looksWhole || passed)) return;
      const timer = setTimeout(
        () => lookAgain(next.ask, next.name),
        look.value.line === null ? 0 : LOOK_AFTER_MS,
      );
      return () => clearTimeout(timer);
    });
  });

  const scene = async (): Promise<StillScene | null> => {
    const open = film.value;
    if (open === null) return null;
    if (still.state.value.kind !== 'done') {
      await still.run((thread, onShare) => thread.stillScene(open.info, onShare));
    }
    const now = still.state.value;
    return now.kind === 'done' && film.value === open ? now.found : null;
  };

  return {
    /** Small pictures and a first streak image, as they come. */
    look,
    /** Small pictures, from looking or from measuring: whichever has more. */
    pictures: computed<readonly GreyFrame[]>(() => {
      const [looked, measured] = [look.value.pictures, measuring.pictures.value];
      return measured.length > looked.length ? measured : looked;
    }),
    still: { state: still.state, find: scene, cancel: still.cancel },
    flight: {
      state: flight.state,
      /** Puts the flight into one picture; again wherever the choice or what was measured has changed. */
      async compose(choice: FlightChoice) {
        const open = film.value;
        const found = await scene();
        if (open === null || found === null) return;
        const reading = readings.scale.value;
        const ball = draft.value?.ball;
        const radius = reading?.ok && ball ? ball.diameter.value / 2 / reading.value.value : null;
        const frames = flightFrames(
          measuring.positions.value,
          radius,
          open.info.frameCount,
          choice,
        );
        await flight.run((thread, onShare) => thread.flight({ scene: found, frames }, onShare));
      },
      cancel() {
        flight.cancel();
        still.cancel();
      },
    },
    /** The threads that gave the frames were replaced: what they were asked for will not come. */
    resume() {
      breakOff();
      for (const task of [still, flight]) task.cancel();
      begun.value += 1;
    },
    /** Another film. */
    reset() {
      looked = '';
      isCutShort = false;
      looking.reset();
      still.reset();
      flight.reset();
      look.value = { ...NO_LOOK, rows: new KeptRows(), version: look.value.version + 1 };
    },
    dispose() {
      stopLooking();
      for (const task of [looking, still, flight]) task.reset();
    },
  };
}

const stopped = (fault: ThreadFault) =>
  stoppedBy(
    'sceneryStopped',
    'The thread that looks through the film stopped.',
    fault,
    'Open the film again; everything else works without it.',
  );
