import { failure, type Outcome } from '../core/reason';

/** The flicker must explain at least this share of the brightness's variance over time. */
export const FLICKER_SHARE = 0.3;
/** Flickers a clip must show before their frequency or phase means anything. */
const FEWEST_FLICKERS = 2;

export const noFlicker = (): Outcome<never> =>
  failure(
    'noFlicker',
    'No steady flicker near the expected frequency was found.',
    "Light the scene by the lamp alone, and check the mains frequency and the clip's rate.",
  );

/** Null where `flickers` of them are enough. */
export const tooFewFlickers = (flickers: number): Outcome<never> | null =>
  flickers >= FEWEST_FLICKERS
    ? null
    : failure(
        'lampTooShort',
        `The clip shows ${flickers.toFixed(1)} flickers of the lamp; at least ${FEWEST_FLICKERS} are needed.`,
        'Film the lamp for longer.',
        { flickers: flickers.toFixed(1), fewest: FEWEST_FLICKERS },
      );
