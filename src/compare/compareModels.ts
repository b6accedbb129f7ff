import type { Quantity } from '../core/estimate';
import { type Outcome, type Reason, success } from '../core/reason';
import type { StatedLauncher } from '../launch/fromShot';
import { MODEL_NAMES, MODELS, type ModelName } from '../launch/models';
import { type Predicted, predict } from '../launch/predict';
import type { Exit, LaunchCurve, SealOpening } from '../launch/types';
import { type Agreement, agreement } from './agreement';
import { closersOf, type GapCloser } from './gap';

export interface ComparisonQuestion extends StatedLauncher {
  readonly coverage: number;
  /** m/s and s, as the film gives them; null: it gives none. */
  readonly measured: { readonly speed: Quantity | null; readonly lead: Quantity | null };
}

/** What one model says of the shot as stated, and how the film stands to it. */
export interface ModelPrediction {
  /** m/s */
  readonly speed: Predicted;
  /** Exit minus opening of the seal, s. */
  readonly lead: Predicted;
  readonly exit: Exit & { readonly seal: SealOpening };
  readonly curve: LaunchCurve;
  /** Null: the model has no waves. */
  readonly profiles: readonly GasProfile[] | null;
  /** Null: the film gives nothing to hold against it. */
  readonly speedAgreement: Outcome<Agreement> | null;
  readonly leadAgreement: Outcome<Agreement> | null;
  readonly warnings: readonly Reason[];
}

type GasProfile = NonNullable<ReturnType<(typeof MODELS)[ModelName]['run']>['profiles']>[number];

/** The exit speed, m/s, of a barrel of the length `at`, m, all else as stated. */
export interface LengthPoint {
  readonly at: number;
  readonly speed: Quantity;
}

/** What the model says of launchers other than the one stated. */
export interface ModelOutlook {
  /** Those of the lengths tried at which the ball leaves. */
  readonly lengths: readonly LengthPoint[];
  /** Null: the film gives no speed, or the model has none to differ from it. */
  readonly closers: readonly GapCloser[] | null;
}

/** Told one by one: what is worked out fast comes first. */
export type ComparisonPart =
  | {
      readonly kind: 'prediction';
      readonly model: ModelName;
      readonly told: Outcome<ModelPrediction>;
    }
  | { readonly kind: 'outlook'; readonly model: ModelName; readonly told: ModelOutlook };

/** Barrel lengths tried, as shares of the one stated. */
const LENGTH_SHARES = [0.3, 0.5, 0.75, 1, 1.25, 1.5];
/** Runs of a model that a converged launch and a search for one input come to, for the progress. */
const RUNS_CONVERGED = 6;
const RUNS_A_CLOSER = 12;

/**
 * Every model beside the film: `onPart` is told of each as it is done, `onShare` of the share of the work, 0..1. A
 * launcher that cannot be is refused (`badLauncher`); a model under which the ball does not leave says so in its part.
 */
export function compareModels(
  question: ComparisonQuestion,
  onPart: (part: ComparisonPart) => void,
  onShare?: (share: number) => void,
): void {
  const inputs = Object.values(question.uncertainty).filter((u) => u > 0).length;
  const runs = 1 + 2 * inputs;
  const work = {
    prediction: runs + RUNS_CONVERGED,
    lengths: LENGTH_SHARES.length * runs,
    closers: (model: ModelName) =>
      question.measured.speed === null ? 0 : RUNS_A_CLOSER * MODELS[model].inputs.length,
  };
  const all = MODEL_NAMES.reduce(
    (sum, model) =>
      sum + MODELS[model].cost * (work.prediction + work.lengths + work.closers(model)),
    0,
  );
  let done = 0;
  /** Tells of a piece of work while it goes on, and counts it at its end. */
  const piece = <T>(size: number, act: (told: (share: number) => void) => T): T => {
    const result = act((share) => onShare?.((done + share * size) / all));
    done += size;
    onShare?.(done / all);
    return result;
  };
  const byCost = [...MODEL_NAMES].sort((a, b) => MODELS[a].cost - MODELS[b].cost);
  const predictions = byCost.map((model) => {
    const told = piece(MODELS[model].cost * work.prediction, (tell) =>
      predictionOf(model, question, tell),
    );
    onPart({ kind: 'prediction', model, told });
    return { model, told };
  });
  for (const { model, told } of predictions) {
    const { cost } = MODELS[model];
    const lengths = piece(cost * work.lengths, (tell) => lengthsOf(model, question, tell));
    const closers = piece(cost * work.closers(model), (tell) =>
      told.ok ? gapClosers(model, question, told.value, tell) : null,
    );
    onPart({ kind: 'outlook', model, told: { lengths, closers } });
  }
}

function predictionOf(
  name: ModelName,
  { launcher, uncertainty, coverage, measured }: ComparisonQuestion,
  onProgress: (share: number) => void,
): Outcome<ModelPrediction> {
  const { run, varied } = MODELS[name];
  const prediction = predict(run, launcher, uncertainty, { coverage, varied, onProgress });
  if (!prediction.ok) return prediction;
  const { launch, speed, lead, warnings } = prediction.value;
  if (!launch.exit.ok) return launch.exit;
  const against = (film: Quantity | null, model: Predicted) =>
    film && agreement(film, model.quantity, coverage);
  return success({
    ...{ speed, lead, warnings, curve: launch.curve, exit: launch.exit.value },
    profiles: launch.profiles ?? null,
    speedAgreement: against(measured.speed, speed),
    leadAgreement: against(measured.lead, lead),
  });
}

/** The length itself is what is varied: its uncertainty is no part of the band. */
function lengthsOf(
  name: ModelName,
  { launcher, uncertainty, coverage }: ComparisonQuestion,
  onProgress: (share: number) => void,
): LengthPoint[] {
  const shortest = launcher.startPosition + launcher.ballDiameter / 2;
  const { barrelLength: _, ...others } = uncertainty;
  const lengths = LENGTH_SHARES.map((share) => share * launcher.barrelLength);
  return lengths.flatMap((at, i) => {
    onProgress(i / lengths.length);
    if (at <= shortest) return [];
    const there = predict(MODELS[name].varied, { ...launcher, barrelLength: at }, others, {
      coverage,
    });
    return there.ok ? [{ at, speed: there.value.speed.quantity }] : [];
  });
}

function gapClosers(
  name: ModelName,
  { launcher, uncertainty, measured }: ComparisonQuestion,
  prediction: ModelPrediction,
  onProgress: (share: number) => void,
): GapCloser[] | null {
  if (measured.speed === null) return null;
  const { varied, inputs } = MODELS[name];
  const { exit } = varied(launcher);
  if (!exit.ok) return null;
  // The gap is to the model's best run; what the faster runs are off by is no part of it.
  const target = measured.speed.value + exit.value.speed - prediction.speed.quantity.value;
  return closersOf(varied, launcher, uncertainty, target, inputs, (count) =>
    onProgress(count / inputs.length),
  );
}
