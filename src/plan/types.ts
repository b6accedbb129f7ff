/** What a budget's lines come from. */
export type TermName = 'fit' | 'motion' | 'scale' | 'clock' | 'muzzle' | 'ballAndAir';

export interface Term {
  readonly name: TermName;
  /** Its part of the speed's standard uncertainty, m/s. */
  readonly u: number;
  /** Its part of the variance, 0..1. */
  readonly share: number;
}
