import type { ComparisonPart, ComparisonQuestion } from '../compare/compareModels';
import type { SeriesFit } from '../compare/fitSeries';
import type { SeriesFitQuestion } from '../compare/seriesCurve';
import type { Outcome } from '../core/reason';
import type { CurvePoint, CurveQuestion } from '../launch/speedCurve';

/**
 * A thread that runs launch models: started for one piece of work and ended with it. To cancel, end the worker.
 */
export interface LaunchApi {
  /** Every model beside the film; `onPart` gets each as it is done, `onShare` 0..1. Throws `badLauncher`. */
  compare(
    question: ComparisonQuestion,
    onPart: (part: ComparisonPart) => void,
    onShare: (share: number) => void,
  ): Promise<void>;
  /** Exit speeds against barrel length or residual pressure. Throws `badLauncher`. */
  curve(question: CurveQuestion, onShare: (share: number) => void): Promise<readonly CurvePoint[]>;
  /** Inputs of the launcher fitted to a series. */
  fit(question: SeriesFitQuestion, onShare: (share: number) => void): Promise<Outcome<SeriesFit>>;
}
