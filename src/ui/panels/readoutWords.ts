import type { Shot } from '../../app/resultTypes';

type Direction = Shot['timing']['readout']['direction'];

/** Directions of readout in words. */
export const DIRECTIONS: readonly { readonly value: Direction; readonly label: string }[] = [
  { value: 'down', label: 'downwards' },
  { value: 'up', label: 'upwards' },
  { value: 'right', label: 'to the right' },
  { value: 'left', label: 'to the left' },
];

export const directionWords = (direction: Direction): string =>
  DIRECTIONS.find(({ value }) => value === direction)?.label ?? direction;
