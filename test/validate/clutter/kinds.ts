import { addBreakUp } from './kinds/breakUp';
import { addCompression, addFaultyPixels, addFlicker, addShake } from './kinds/camera';
import { addFrameCut, addPost, addTubeEnd } from './kinds/cuts';
import { addCrossing, addFlickeringDisc, addFollower } from './kinds/rivals';
import { addReflection, addShadow } from './kinds/room';
import { addFragments, addHaze } from './kinds/seal';
import type { Stage } from './stage';

const KINDS = {
  fragments: addFragments,
  haze: addHaze,
  flicker: addFlicker,
  pixels: addFaultyPixels,
  compression: addCompression,
  shadow: addShadow,
  reflection: addReflection,
  breakUp: addBreakUp,
  flickeringDisc: addFlickeringDisc,
  crossing: addCrossing,
  follower: addFollower,
  frameCut: addFrameCut,
  post: addPost,
  tubeEnd: addTubeEnd,
  shake: addShake,
} as const satisfies Record<string, (stage: Stage) => void>;

/** A kind of clutter. */
export type Kind = keyof typeof KINDS;

export const ALL_KINDS = Object.keys(KINDS) as Kind[];

export const addKind = (kind: Kind, stage: Stage): void => KINDS[kind](stage);
