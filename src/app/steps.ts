import { isAvailable } from '../core/estimate';
import { formatCount, formatQuantity, numberAt } from '../core/format';
import { missingInputs, type StepName } from './draft';
import type { Session } from './session';

/** Done: nothing more is needed. Open: may be looked at or is still to come. Needs you: waits for a person. */
export type StepState = 'done' | 'open' | 'needsYou';

export interface StepSummary {
  readonly name: StepName;
  readonly state: StepState;
  /** The step's one number, or a word where there is none yet. */
  readonly figure: string;
}

type Summary = Omit<StepSummary, 'name'>;

export const STEP_TITLES: Readonly<Record<StepName, string>> = {
  footage: 'Footage',
  clock: 'Clock',
  scale: 'Scale',
  ball: 'Ball',
  seal: 'Seal',
  result: 'Result',
  models: 'Models',
};

/** Fewer frames than this give no speed (three points for a fit with one degree of freedom). */
export const FEWEST_FRAMES = 3;

/** Reads the shot as a row of steps. Call it where signals are followed. */
export function summarise(session: Session, speedUnit: string): readonly StepSummary[] {
  return [
    { name: 'footage', ...footage(session) },
    { name: 'clock', ...clock(session) },
    { name: 'scale', ...scale(session) },
    { name: 'ball', ...ball(session) },
    { name: 'seal', ...seal(session) },
    { name: 'result', ...result(session, speedUnit) },
    { name: 'models', ...models(session, speedUnit) },
  ];
}

const needs = (figure: string): Summary => ({ state: 'needsYou', figure });
const open = (figure: string): Summary => ({ state: 'open', figure });
const done = (figure: string): Summary => ({ state: 'done', figure });

export interface NextStep {
  readonly step: StepName;
  readonly why: string;
}

/** Where the work goes on once nothing is left to state in the step looked at; null: here. */
export function nextStep(session: Session, here: StepName): NextStep | null {
  const { shots, measuring, awaited } = session;
  const draft = shots.draft.value;
  if (draft === null || awaited.value !== null) return null;
  if (measuring.status.value.kind === 'running') return null;
  const [missing] = missingInputs(draft);
  const measured =
    measuring.reduction.value !== null && measuring.freshness.value !== 'measureAgain';
  if (missing === undefined && measured) {
    if (here === 'models') return null;
    return here === 'result'
      ? { step: 'models', why: 'Hold the film against what launch models predict.' }
      : { step: 'result', why: 'Measured.' };
  }
  // The measuring steps send a person to what is missing themselves.
  if (here === 'ball' || here === 'result' || lacks(session, here)) return null;
  if (missing !== undefined) return { step: missing.step, why: missing.reason.message };
  const why =
    measuring.reduction.value === null
      ? 'All that is needed is stated: measure.'
      : 'Inputs changed: measure again.';
  return { step: 'ball', why };
}

function hasProblem(session: Session, step: StepName): boolean {
  return session.notices.list.value.some((one) => one.place === step && one.tone === 'problem');
}

function lacks(session: Session, step: StepName): boolean {
  const draft = session.shots.draft.value;
  return draft !== null && missingInputs(draft).some((one) => one.step === step);
}

function footage(session: Session): Summary {
  const film = session.films.film.value;
  if (film === null) {
    return session.films.state.value.kind === 'opening' ? open('opening') : needs('none open');
  }
  const figure = `${formatCount(film.info.frameCount)} frames`;
  const wanting =
    film.info.frameCount < FEWEST_FRAMES ||
    session.awaited.value !== null ||
    hasProblem(session, 'footage');
  return wanting ? needs(figure) : done(figure);
}

function clock(session: Session): Summary {
  const reading = session.readings.clock.value;
  if (reading === null) return open('no film');
  if (!reading.ok) return needs(reading.reason.code === 'noRate' ? 'no rate' : 'no clock');
  const figure = `${numberAt(1 / reading.value.frameInterval, 5)} /s`;
  return reading.value.warnings.length > 0 ? needs(figure) : done(figure);
}

/** Warnings of a scale that contradicts itself: one of its inputs is wrong. */
const DISAGREEMENTS: ReadonlySet<string> = new Set([
  'lengthsDisagree',
  'planeDisagrees',
  'notARectangle',
  'distancesDisagree',
]);

function scale(session: Session): Summary {
  if (session.shots.draft.value === null) return open('no film');
  const reading = session.readings.scale.value;
  if (reading === null) return needs('no length');
  if (!reading.ok) return needs('no scale');
  const figure = `${formatQuantity(reading.value, 'length', 'mm', false)}/px`;
  const wanting =
    lacks(session, 'scale') || reading.value.warnings.some(({ code }) => DISAGREEMENTS.has(code));
  return wanting ? needs(figure) : done(figure);
}

function ball(session: Session): Summary {
  const { status, positions, reduction, freshness } = session.measuring;
  const now = status.value;
  const used = positions.value.filter((one) => one.used).length;
  const figure = `${formatCount(used)} frames used`;
  if (session.shots.draft.value === null) return open('no film');
  if (now.kind === 'running') return open('measuring');
  if (now.kind === 'failed' || hasProblem(session, 'ball')) return needs('not measured');
  if (reduction.value === null) return open('not measured');
  return used < FEWEST_FRAMES || freshness.value === 'measureAgain' ? needs(figure) : done(figure);
}

function seal(session: Session): Summary {
  const draft = session.shots.draft.value;
  if (draft === null) return open('no film');
  if (draft.seals?.muzzle == null) return done('none in view');
  const reduction = session.measuring.reduction.value;
  if (reduction === null) return open('not measured');
  const burst = reduction.result.sealBurst;
  if (!('value' in burst)) return needs('no burst found');
  return done(`burst ${formatQuantity({ value: burst.value, u: burst.u }, 'time', 'ms', false)}`);
}

function result(session: Session, speedUnit: string): Summary {
  const reduction = session.measuring.reduction.value;
  if (reduction === null) return open('no speed yet');
  const { exitVelocity } = reduction.result;
  if (!isAvailable(exitVelocity)) return needs('no speed');
  const figure = formatQuantity(exitVelocity, 'speed', speedUnit, false);
  const stale = session.measuring.freshness.value === 'measureAgain';
  return stale ? needs(figure) : done(figure);
}

/** The model that takes the most into account stands for all. */
function models(session: Session, speedUnit: string): Summary {
  const { state, views, isStale } = session.models;
  const draft = session.shots.draft.value;
  if (draft === null) return open('no film');
  if (draft.launcher === null) return open('no launcher');
  const now = state.value;
  if (now.kind === 'running') return open('predicting');
  if (now.kind === 'failed') return needs('no prediction');
  const told = views.value.gasDynamics.prediction;
  if (told === null) return open('not predicted');
  if (!told.ok) return needs('no prediction');
  const figure = `${formatQuantity(told.value.speed.quantity, 'speed', speedUnit, false)} predicted`;
  return isStale.value ? needs(figure) : done(figure);
}
