import { SUBJECTS } from '../registry';

export interface Wanted {
  readonly subject: string;
  readonly seed: number;
  /** Null: all of the subject's. */
  readonly className: string | null;
}

export const DEFAULT_SEED = 1;
export const USAGE = `Usage: npm run validate -- ${Object.keys(SUBJECTS).join('|')} [--seed N|clock] [--class NAME]`;

/** What the command line asks for, or what is wrong with it. `now`: for a seed drawn from the clock, ms. */
export function readArguments(words: readonly string[], now: number): Wanted | string {
  const [subject, ...options] = words;
  const classes = SUBJECTS[subject ?? ''];
  if (subject === undefined || classes === undefined) {
    return `What is to be validated? Known: ${Object.keys(SUBJECTS).join(', ')}.`;
  }
  let seed = DEFAULT_SEED;
  let className: string | null = null;
  for (let i = 0; i < options.length; i += 2) {
    const value = options[i + 1];
    if (options[i] === '--seed' && value !== undefined) {
      seed = value === 'clock' ? now % 2 ** 31 : Number(value);
      if (!Number.isInteger(seed) || seed < 0 || seed >= 2 ** 32 - 1) {
        return `A seed is a whole number from 0 to ${2 ** 32 - 2}, or "clock"; not "${value}".`;
      }
    } else if (options[i] === '--class' && value !== undefined) {
      if (!classes.some(({ validation }) => validation.name === value)) {
        return `There is no class "${value}"; there are ${classes.map(({ validation }) => validation.name).join(', ')}.`;
      }
      className = value;
    } else {
      return `"${options[i]}" is not understood.`;
    }
  }
  return { subject, seed, className };
}
