import type { Quantity } from '../core/estimate';
import type { Outcome } from '../core/reason';
import type { StatedLauncher } from '../launch/fromShot';
import type { Judgement } from '../plan/judge';
import type { Sweep, SweepQuestion } from '../plan/sweep';
import type { ModelName, Plan } from '../shot/planning';

export interface SpeedQuestion extends StatedLauncher {
  readonly model: ModelName;
  readonly coverage: number;
}

/** A thread that plans: started for one piece of work and ended with it. To cancel, end the worker. */
export interface PlanApi {
  judge(plan: Plan): Promise<Judgement>;
  /** `onShare` gets 0..1. */
  sweep(question: SweepQuestion, onShare: (share: number) => void): Promise<Sweep>;
  /** The exit speed that a launch model expects. Throws `badLauncher`. */
  speed(question: SpeedQuestion, onShare: (share: number) => void): Promise<Outcome<Quantity>>;
}
