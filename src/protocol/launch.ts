import type { ComparisonPart, ComparisonQuestion } from '../compare/compareModels';

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
}
