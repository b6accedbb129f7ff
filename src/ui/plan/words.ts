import type { TermName } from '../../app/resultTypes';

/** What a part of the uncertainty comes from. */
export const TERM_WORDS: Readonly<Record<TermName, string>> = {
  fit: 'noise of the centres, through the fit',
  motion: 'drag and loss at the muzzle, as far as the film leaves them open',
  scale: 'scale',
  clock: 'clock',
  muzzle: 'place of the muzzle plane',
  ballAndAir: 'ball and air',
};
