/** A moment of the shot with its coverage interval, s from the origin of the timeline; before it: negative. */
export interface TimelineEvent {
  readonly kind:
    | 'puncture'
    | 'onset'
    | 'burst'
    | 'contact'
    | 'exit'
    | 'target'
    | 'burstHeard'
    | 'impactHeard';
  readonly time: number;
  readonly low: number;
  readonly high: number;
}

export interface Timeline {
  /** In the order of time. */
  readonly events: readonly TimelineEvent[];
  /** What the times are counted from: the exit, or the zero of the clock where no exit is known. */
  readonly from: 'exit' | 'clock';
  /** Coverage probability of the intervals, 0..1. */
  readonly coverage: number;
}
