import { effect, type Signal, signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { StepName } from '../app/draft';
import { framesOf, placeAmong, type Round } from '../app/frameStates';
import type { MistakeName } from '../app/mistakes';
import { NO_OFFLINE, type Offline } from '../app/offline';
import type { Preferences } from '../app/preferences';
import type { Session } from '../app/session';
import type { FilmMode, PixelReading } from './film/props';
import { FIT, type FilmTransform } from './film/view';
import { createLook } from './stage/look';

/** What is on the screen and nowhere else: the step looked at, the tool in hand, the view of the film. */
export type Desk = ReturnType<typeof createDesk>;

export const PLACES = ['shot', 'report', 'notebook', 'plan', 'mistakes'] as const;
export type Place = (typeof PLACES)[number];

export const INSPECT: FilmMode = { kind: 'inspect' };

export function createDesk(
  session: Session,
  preferences: Preferences,
  offline: Offline = NO_OFFLINE,
) {
  const step: Signal<StepName> = signal('footage');
  const mode = signal<FilmMode>(INSPECT);
  /** Which frames are gone through one by one. */
  const round = signal<Round>('leftOut');
  /** The frame shown under the pointer, and the one to come back to when it leaves. */
  let peeked: { readonly frame: number; readonly from: number } | null = null;

  effect(() => {
    // A tool belongs to the step and the film it was taken up in.
    step.value;
    session.films.film.value;
    mode.value = INSPECT;
  });
  return {
    session,
    preferences,
    offline,
    /** One shot, its report, the notebook of many, the plan of one not yet filmed, or usual mistakes. */
    place: signal<Place>('shot'),
    step,
    mode,
    view: signal<FilmTransform>(FIT),
    pixel: signal<PixelReading | null>(null),
    look: createLook(session),
    round,
    /** The flight plane's grid lies over the film, to see what lens and plane do. */
    gridShown: signal(false),
    /** The mistake that a step's explanation led to; null: the page was opened as a whole. */
    mistake: signal<MistakeName | null>(null),
    helpOpen: signal(false),
    /** Cautions are shown until they have been read once in this session. */
    cautionsOpen: signal(true),
    /** What the tool does and what it found of the first sample is told until it is closed. */
    introOpen: signal(true),
    toggleMode(next: FilmMode) {
      const same = JSON.stringify(next) === JSON.stringify(mode.value);
      mode.value = same ? INSPECT : next;
    },
    putDown() {
      mode.value = INSPECT;
    },
    /** Shows the frame under the pointer for as long as it is there. */
    peek(frame: number | null) {
      const { player } = session;
      if (frame !== null) {
        const from = peeked?.frame === player.current.value ? peeked.from : player.current.value;
        peeked = { frame, from };
        player.pause();
        void player.show(frame);
      } else if (peeked !== null) {
        // Gone to another frame meanwhile: that one stays.
        if (peeked.frame === player.current.value) void player.show(peeked.from);
        peeked = null;
      }
    },
    /** Goes on among the frames of the round; stays where there is no further one. */
    goRound(way: 'first' | 'previous' | 'next') {
      const result = session.measuring.reduction.value?.result;
      if (result === undefined) return;
      const frames = framesOf(round.value, result);
      const inOrder = round.value !== 'poorestFirst';
      const place = placeAmong(frames, session.player.current.value, inOrder);
      const frame = way === 'first' ? frames[0] : place[way];
      if (frame !== undefined && frame !== null) this.pick(frame);
    },
    pick(frame: number) {
      peeked = null;
      session.player.pause();
      void session.player.show(frame);
    },
  };
}

export const DeskContext = createContext<Desk | null>(null);

export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (desk === null) throw new Error('No desk above this component.');
  return desk;
}
