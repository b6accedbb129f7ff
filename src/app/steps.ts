import { isAvailable } from '../core/estimate';
import { formatCount, formatQuantity, numberAt } from '../core/format';
import type { Reason } from '../core/reason';
import { missingInputs, type StepName } from './draft';
import type { Session } from './session';

/** Done: nothing more is needed. Open: may be looked at or is still to come. Needs you: waits for a person. */
export type StepState = 'done' | 'open' | 'needsYou';

export interface StepSummary {
  readonly name: StepName;
  readonly state: StepState;
  readonly figure: Figure;
}

/** The step's one number and what it is of, or what stands where there is none yet; put into words by the page. */
export type Figure =
  | {
      readonly of: 'frames' | 'framesUsed' | 'plain' | 'perPixel' | 'burst' | 'predicted';
      /** As `core/format` writes it. */
      readonly number: string;
    }
  | { readonly of: FigureWord };

type FigureWord =
  | 'opening'
  | 'noneOpen'
  | 'noFilm'
  | 'noRate'
  | 'noClock'
  | 'noLength'
  | 'noScale'
  | 'measuring'
  | 'notMeasured'
  | 'noneInView'
  | 'noBurst'
  | 'noSpeedYet'
  | 'noSpeed'
  | 'noLauncher'
  | 'predicting'
  | 'noPrediction'
  | 'notPredicted';

type Summary = Omit<StepSummary, 'name'>;

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

const asFigure = (figure: Figure | FigureWord): Figure =>
  typeof figure === 'string' ? { of: figure } : figure;
const needs = (figure: Figure | FigureWord): Summary => ({
  state: 'needsYou',
  figure: asFigure(figure),
});
const open = (figure: Figure | FigureWord): Summary => ({
  state: 'open',
  figure: asFigure(figure),
});
const done = (figure: Figure | FigureWord): Summary => ({
  state: 'done',
  figure: asFigure(figure),
});

export interface NextStep {
  readonly step: StepName;
  readonly why: 'holdAgainst' | 'measured' | 'stated' | 'changed' | Reason;
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
      ? { step: 'models', why: 'holdAgainst' }
      : { step: 'result', why: 'measured' };
  }
  // The measuring steps send a person to what is missing themselves.
  if (here === 'ball' || here === 'result' || lacks(session, here)) return null;
  if (missing !== undefined) return { step: missing.step, why: missing.reason };
  return { step: 'ball', why: measuring.reduction.value === null ? 'stated' : 'changed' };
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
    return session.films.state.value.kind === 'opening' ? open('opening') : needs('noneOpen');
  }
  const figure: Figure = { of: 'frames', number: formatCount(film.info.frameCount) };
  const wanting =
    film.info.frameCount < FEWEST_FRAMES ||
    session.awaited.value !== null ||
    hasProblem(session, 'footage');
  return wanting ? needs(figure) : done(figure);
}

function clock(session: Session): Summary {
  const reading = session.readings.clock.value;
  if (reading === null) return open('noFilm');
  if (!reading.ok) return needs(reading.reason.code === 'noRate' ? 'noRate' : 'noClock');
  const figure: Figure = {
    of: 'plain',
    number: `${numberAt(1 / reading.value.frameInterval, 5)} /s`,
  };
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
  if (session.shots.draft.value === null) return open('noFilm');
  const reading = session.readings.scale.value;
  if (reading === null) return needs('noLength');
  if (!reading.ok) return needs('noScale');
  const figure: Figure = {
    of: 'perPixel',
    number: formatQuantity(reading.value, 'length', 'mm', false),
  };
  const wanting =
    lacks(session, 'scale') || reading.value.warnings.some(({ code }) => DISAGREEMENTS.has(code));
  return wanting ? needs(figure) : done(figure);
}

function ball(session: Session): Summary {
  const { status, positions, reduction, freshness } = session.measuring;
  const now = status.value;
  const used = positions.value.filter((one) => one.used).length;
  const figure: Figure = { of: 'framesUsed', number: formatCount(used) };
  if (session.shots.draft.value === null) return open('noFilm');
  if (now.kind === 'running') return open('measuring');
  if (now.kind === 'failed' || hasProblem(session, 'ball')) return needs('notMeasured');
  if (reduction.value === null) return open('notMeasured');
  return used < FEWEST_FRAMES || freshness.value === 'measureAgain' ? needs(figure) : done(figure);
}

function seal(session: Session): Summary {
  const draft = session.shots.draft.value;
  if (draft === null) return open('noFilm');
  if (draft.seals?.muzzle == null) return done('noneInView');
  const reduction = session.measuring.reduction.value;
  if (reduction === null) return open('notMeasured');
  const burst = reduction.result.sealBurst;
  if (!('value' in burst)) return needs('noBurst');
  return done({
    of: 'burst',
    number: formatQuantity({ value: burst.value, u: burst.u }, 'time', 'ms', false),
  });
}

function result(session: Session, speedUnit: string): Summary {
  const reduction = session.measuring.reduction.value;
  if (reduction === null) return open('noSpeedYet');
  const { exitVelocity } = reduction.result;
  if (!isAvailable(exitVelocity)) return needs('noSpeed');
  const figure: Figure = {
    of: 'plain',
    number: formatQuantity(exitVelocity, 'speed', speedUnit, false),
  };
  const stale = session.measuring.freshness.value === 'measureAgain';
  return stale ? needs(figure) : done(figure);
}

/** The model that takes the most into account stands for all. */
function models(session: Session, speedUnit: string): Summary {
  const { state, views, isStale } = session.models;
  const draft = session.shots.draft.value;
  if (draft === null) return open('noFilm');
  if (draft.launcher === null) return open('noLauncher');
  const now = state.value;
  if (now.kind === 'running') return open('predicting');
  if (now.kind === 'failed') return needs('noPrediction');
  const told = views.value.gasDynamics.prediction;
  if (told === null) return open('notPredicted');
  if (!told.ok) return needs('noPrediction');
  const figure: Figure = {
    of: 'predicted',
    number: formatQuantity(told.value.speed.quantity, 'speed', speedUnit, false),
  };
  return isStale.value ? needs(figure) : done(figure);
}
