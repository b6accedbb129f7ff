import type { Estimate, Quantity } from '../core/estimate';

/** What one input that other shots may share does to a shot's value. */
export interface SharedEffect {
  readonly source: string;
  /** Shots whose effects bear the same key share the input and its error. */
  readonly key: string;
  /** Change of the value for one standard uncertainty of the input, signed. */
  readonly effect: number;
  readonly dof: number | null;
}

/** One shot's value, what is its own alone kept apart from what it may share with others. */
export interface SeriesShot {
  readonly name: string;
  readonly value: number;
  /** Standard uncertainty that is this shot's own, and its degrees of freedom. */
  readonly u: number;
  readonly dof: number | null;
  readonly shared: readonly SharedEffect[];
}

/** A mean of shots under one estimate of the variance between them. */
export interface BetweenShots {
  /** Standard deviation between the shots beyond what their own uncertainties explain. */
  readonly tau: number;
  readonly mean: Estimate;
}

/** Whether the shots differ as much as their uncertainties explain, or by more or less than chance lets them. */
export type ScatterVerdict = 'explained' | 'more' | 'less';

/** How the shots' scatter compares with their uncertainties. */
export interface Consistency {
  readonly chiSquare: number;
  readonly dof: number;
  /** Root of chi-square over its degrees of freedom (Birge 1932); about 1 where the uncertainties explain the scatter. */
  readonly birgeRatio: number;
  /** How often chance alone would make them differ as much. */
  readonly probability: number;
  readonly verdict: ScatterVerdict;
}

/** Two-sided test of Grubbs for the value farthest from the mean. */
export interface GrubbsTest {
  /** Place in the series. */
  readonly index: number;
  readonly statistic: number;
  readonly critical: number;
  readonly outlier: boolean;
}

/** How a launcher shoots, from several shots. */
export interface SeriesReport {
  /** Weighted by the shots' own uncertainties and the scatter between them; what they share counted in full. */
  readonly mean: Quantity;
  /** Standard uncertainty of the mean that more shots would lessen, and that which they would not. */
  readonly randomU: number;
  readonly sharedU: number;
  /** The second split by source, largest first. */
  readonly sharedSources: readonly { readonly source: string; readonly u: number }[];
  /** Standard deviation of the values as measured: what the next shot's will scatter by. */
  readonly repeatability: Quantity;
  /** The launcher's own: what is left of the scatter when the shots' own uncertainties are taken off. */
  readonly launcherScatter: {
    readonly value: number;
    readonly interval: readonly [low: number, high: number];
  };
  readonly consistency: Consistency;
  /** Weighted mean with no scatter between shots, and with it estimated in two ways; shared parts left out. */
  readonly fixed: Estimate;
  readonly derSimonianLaird: BetweenShots;
  readonly mandelPaule: BetweenShots;
  /** Each shot's distance from the mean over its standard deviation, scatter between shots counted. */
  readonly deviations: readonly number[];
  /** Null: fewer than three shots, or all alike. */
  readonly grubbs: GrubbsTest | null;
}
