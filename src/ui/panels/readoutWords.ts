import type { Shot } from '../../app/resultTypes';
import { t } from '../../text/text';

type Direction = Shot['timing']['readout']['direction'];

const DIRECTIONS: readonly Direction[] = ['down', 'up', 'right', 'left'];

export const directionWords = (direction: Direction): string =>
  t(`panels.shutter.direction.${direction}`);

/** Directions of readout to choose from. */
export const directionChoices = () =>
  DIRECTIONS.map((value) => ({ value, label: directionWords(value) }));
