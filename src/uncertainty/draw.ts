import type { Random } from '../core/random';
import type { Distribution } from '../shot/result';

/** A distribution about an input's estimate that its standard uncertainty and degrees of freedom tell whole. */
export type Spread = Exclude<Distribution, 'discrete'>;

/** What is known of an input whose standard uncertainty has these degrees of freedom, where nothing else is stated. */
export const usualSpread = (dof: number | null): Spread => (dof === null ? 'normal' : 'student');

/**
 * One draw of an input's error in units of its standard uncertainty (JCGM 101:2008, 6.4.2 rectangular, 6.4.5
 * triangular, 6.4.7 normal, 6.4.9 Student's t).
 */
export function standardDraw(random: Random, spread: Spread, dof: number | null): number {
  switch (spread) {
    case 'normal':
      return random.normal();
    case 'student':
      return random.normal() * studentScale(random, dof);
    case 'rectangular':
      return Math.sqrt(3) * (2 * random.uniform() - 1);
    case 'triangular':
      return Math.sqrt(6) * (random.uniform() + random.uniform() - 1);
  }
}

/** Beyond this many degrees of freedom a Student draw is a normal one for every use here. */
const NEARLY_NORMAL = 100;

/** Factor that makes a normal draw a Student one: square root of dof over a chi-square draw. */
export function studentScale(random: Random, dof: number | null): number {
  if (dof === null || dof > NEARLY_NORMAL) return 1;
  const whole = Math.max(1, Math.round(dof));
  let squares = 0;
  for (let i = 0; i < whole; i++) squares += random.normal() ** 2;
  return Math.sqrt(whole / squares);
}
