import type { Quantity } from '../core/estimate';
import { type Outcome, type Reason, success } from '../core/reason';
import type { StatedLauncher } from '../launch/fromShot';
import { MODEL_NAMES, MODELS, type ModelName } from '../launch/models';
import { type Predicted, predict } from '../launch/predict';
import type { Profile } from '../launch/profiles';
import { type CurvePoint, type CurveQuestion, speedCurve } from '../launch/speedCurve';
import type { Exit, LaunchCurve, SealOpening } from '../launch/types';
import { followed } from '../launch/unfollowed';
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
  readonly profiles: readonly Profile[] | null;
  /** Null: the film gives nothing to hold against it. */
  readonly speedAgreement: Outcome<Agreement> | null;
  readonly leadAgreement: Outcome<Agreement> | null;
  readonly warnings: readonly Reason[];
}

/** What the model says of launchers other than the one stated. */
export interface ModelOutlook {
  /** Those of the lengths tried at which the ball leaves. */
  readonly lengths: readonly CurvePoint[];
  /** Those of the residual pressures tried with which the ball leaves; null: the model knows of none. */
  readonly residuals: readonly CurvePoint[] | null;
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

/** Residual pressures worth a look, as shares of an atmosphere: 0.01 % to 10 %. */
export const RESIDUAL_SHARES: readonly number[] = [1e-4, 1e-3, 1e-2, 1e-1];
/** Barrel lengths tried, as shares of the one stated. */
const LENGTH_SHARES = [0.3, 0.5, 0.75, 1, 1.25, 1.5];
/** Runs of a model that a converged launch and a search for one input come to, for the progress. */
const RUNS_CONVERGED = 6;
const RUNS_A_CLOSER = 12;

const knowsResidual = (model: ModelName): boolean =>
  MODELS[model].inputs.includes('residualPressure');

/**
 * Every model beside the film: `onPart` is told of each as it is done, `onShare` of the share of the work, 0..1. A
 * launcher that cannot be is refused (`badLauncher`); a model that cannot follow it, or under which the ball does not
 * leave, says so in its part.
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
    residuals: (model: ModelName) => (knowsResidual(model) ? RESIDUAL_SHARES.length * runs : 0),
    closers: (model: ModelName) =>
      question.measured.speed === null ? 0 : RUNS_A_CLOSER * MODELS[model].inputs.length,
  };
  const all = MODEL_NAMES.reduce(
    (sum, model) =>
      sum +
      MODELS[model].cost *
        (work.prediction + work.lengths + work.residuals(model) + work.closers(model)),
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
  const lengths = LENGTH_SHARES.map((share) => share * question.launcher.barrelLength);
  const residuals = RESIDUAL_SHARES.map((share) => share * question.launcher.air.pressure);
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
    const curve = (what: CurveQuestion['what'], values: readonly number[], size: number) =>
      piece(cost * size, (tell) => speedCurve({ ...question, model, what, values }, tell));
    const atLengths = curve('barrelLength', lengths, work.lengths);
    const atResiduals = knowsResidual(model)
      ? curve('residualPressure', residuals, work.residuals(model))
      : null;
    const closers = piece(cost * work.closers(model), (tell) =>
      told.ok ? gapClosers(model, question, told.value, tell) : null,
    );
    onPart({
      kind: 'outlook',
      model,
      told: { lengths: atLengths, residuals: atResiduals, closers },
    });
  }
}

function predictionOf(
  name: ModelName,
  { launcher, uncertainty, coverage, measured }: ComparisonQuestion,
  onProgress: (share: number) => void,
): Outcome<ModelPrediction> {
  const { run, varied } = MODELS[name];
  const tried = followed(() =>
    predict(run, launcher, uncertainty, { coverage, varied, onProgress }),
  );
  const prediction = tried.ok ? tried.value : tried;
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
