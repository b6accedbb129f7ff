import { computed, effect, signal, untracked } from '@preact/signals';
import type { FlightChoice } from '../../app/flightFrames';
import { greyRange } from '../../app/greyRange';
import type { Session } from '../../app/session';
import type { GreyFrame } from '../../core/frame';

/**
 * What the film area shows: `filmed` the frame itself, `change` what differs from the still scene, `between` what
 * differs from the frame held beside it, `flight` the whole flight in one picture.
 */
export type Showing = 'filmed' | 'change' | 'between' | 'flight';

/** Changes as large as this share of white are shown as black and white; with greys stretched, a smaller one. */
const CHANGE_SHARE = 0.5;
const STRETCHED_CHANGE_SHARE = 0.08;

/** How the film is looked at; no part of a shot, and anew with every film. */
export function createLook({ films, player, scenery }: Session) {
  const showing = signal<Showing>('filmed');
  const held = signal<GreyFrame | null>(null);
  const magnified = signal(false);
  /** Grey values shown as black and as white; null: those of the format. */
  const greys = signal<{ readonly low: number; readonly high: number } | null>(null);
  const flight = signal<FlightChoice>({ frames: 'apart', what: 'ball' });

  effect(() => {
    films.film.value;
    untracked(() => {
      showing.value = 'filmed';
      held.value = null;
      greys.value = null;
    });
  });
  const white = () => player.shown.value?.white ?? 255;
  return {
    showing,
    held,
    magnified,
    greys,
    flight,
    /** The picture in the film area; null: none has come yet. */
    picture: computed<GreyFrame | null>(() => {
      if (showing.value !== 'flight') return player.shown.value;
      const work = scenery.flight.state.value;
      return work.kind === 'done' ? work.found : null;
    }),
    /** What the picture is held against; null: nothing. */
    against: computed<GreyFrame['data'] | Float32Array | null>(() => {
      if (showing.value === 'between') return held.value?.data ?? null;
      if (showing.value !== 'change') return null;
      const work = scenery.still.state.value;
      return work.kind === 'done' ? work.found.level : null;
    }),
    /** Changes so large are shown as black and white, grey values. */
    changeReach: computed(
      () => (greys.value === null ? CHANGE_SHARE : STRETCHED_CHANGE_SHARE) * white(),
    ),
    show(next: Showing) {
      showing.value = next;
      if (next === 'change') void scenery.still.find();
      if (next === 'flight') void scenery.flight.compose(flight.value);
    },
    choose(next: FlightChoice) {
      flight.value = next;
      void scenery.flight.compose(next);
    },
    /** Shows nearly all greys of the frame on screen between black and white; the same window then holds for all frames. */
    stretch(on: boolean) {
      const frame = player.shown.value;
      greys.value = on && frame !== null ? greyRange(frame) : null;
    },
    /** Keeps the frame on screen beside those gone on to. */
    hold(on: boolean) {
      held.value = on ? player.shown.value : null;
      if (!on && showing.value === 'between') showing.value = 'filmed';
    },
  };
}
