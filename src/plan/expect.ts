import { seededRandom } from '../core/random';
import { ExitframeError, failure, type Outcome, success } from '../core/reason';
import type { Pixels, Seconds } from '../core/units';
import { budgetExit } from '../exit/determineExit';
import { nominalSetting } from '../exit/flight';
import { layOut } from '../reduction/layOut';
import { type Scene, setScene } from '../reduction/scene';
import { judgeShake } from '../reduction/shake';
import { sharedInputs } from '../reduction/sharedInputs';
import type { ReductionInputs } from '../reduction/types';
import type { Plan } from '../shot/planning';
import type { Advice, BudgetEntry } from '../shot/result';
import { adviceOf } from '../uncertainty/advice';
import { uniformU } from '../uncertainty/quantity';
import { drawPath, layFlight, measuredCentres, type PlannedFlight, plannedDisc } from './flight';
import { lightingAt } from './light';
import { ballRadius, plannedFilm, plannedShot } from './plannedShot';
import { termsOf } from './terms';
import type { Term } from './types';

/** What a planned shot should give. */
export interface Expectation {
  /** Frames with the ball past the muzzle, least and most by when the exit falls between two frames. */
  readonly frames: readonly [least: number, most: number];
  readonly radius: Pixels;
  readonly blur: Pixels;
  /** Standard uncertainty of a centre with the ball in full view. */
  readonly centreU: Pixels;
  /** Exit speed, m/s, with the standard uncertainty to be expected: root mean square over the draws. */
  readonly speedU: number;
  /** Smallest and largest of the draws. */
  readonly speedURange: readonly [low: number, high: number];
  readonly exitTimeU: Seconds;
  /** By origin, largest first. */
  readonly terms: readonly Term[];
  readonly budget: readonly BudgetEntry[];
  readonly advice: readonly Advice[];
  /** Of the seal's burst and of the lead. */
  readonly burstU: Seconds;
  readonly leadU: Seconds;
}

/** A draw of a film from a plan, budgeted. */
interface Drawn {
  readonly flight: PlannedFlight;
  readonly budget: readonly BudgetEntry[];
  readonly exitTimeU: Seconds;
}

const FEWEST_FRAMES = 3;
const SEED = 1;

/**
 * What a plan should give, by the program's own estimator and budget: the ball's centres are laid along the expected
 * flight, each off by what it will be known to, and concluded as those of a film are. Where between two frames the exit
 * falls, what the air does and how the centres err is chance: `draws` films are drawn, the exit evenly over a frame
 * interval.
 * Failures: those of `setScene` and `budgetExit`, and `tooFewFrames`.
 */
export function expectShot(plan: Plan, draws: number): Outcome<Expectation> {
  const shot = plannedShot(plan);
  if (!shot.ok) return shot;
  const inputs: ReductionInputs = {
    ...{ shot: shot.value, info: plannedFilm(plan, Number.MAX_SAFE_INTEGER) },
    ...{ timestamps: null, footageSha256: null, audio: null },
  };
  const scene = sceneOf(inputs);
  if (!scene.ok) return scene;
  const drawn: Drawn[] = [];
  for (let i = 0; i < draws; i++) {
    const one = drawFilm(plan, inputs, scene.value, i, draws);
    if (!one.ok) return one;
    drawn.push(one.value);
  }
  return success(concluded(plan, drawn));
}

function sceneOf(inputs: ReductionInputs): Outcome<Scene> {
  try {
    return success(setScene(inputs));
  } catch (error) {
    if (!(error instanceof ExitframeError)) throw error;
    return { ok: false, reason: error };
  }
}

function drawFilm(
  plan: Plan,
  inputs: ReductionInputs,
  scene: Scene,
  index: number,
  draws: number,
): Outcome<Drawn> {
  const { shot } = inputs;
  const nominal = nominalSetting(sharedInputs(shot, scene, scene.scale.value, { cosineU: 0 }));
  const random = seededRandom(SEED, index);
  const path = drawPath(plan.speed.value, nominal, random);
  const { contrastToNoise } = lightingAt(plan.picture.light, plan.camera.exposure.value);
  const flight = layFlight(plan, scene, path, contrastToNoise, (index + 0.5) / draws);
  if (flight.frames.length < FEWEST_FRAMES) {
    return failure(
      'planTooFewFrames',
      `The ball is in view in ${flight.inView} frame${flight.inView === 1 ? '' : 's'} past the muzzle; a speed needs at least ${FEWEST_FRAMES}.`,
      'Plan a higher rate or a wider view.',
      { frames: flight.inView, fewest: FEWEST_FRAMES },
    );
  }
  const centres = measuredCentres(flight, ballRadius(plan), random.normal);
  const layout = layOut(inputs, scene, { centres, shake: judgeShake([], 0) });
  if (!layout.points.ok) return layout.points;
  const { metresPerPixel, travel, points } = layout;
  const exit = budgetExit(points.value, sharedInputs(shot, scene, metresPerPixel, travel), {
    ...{ model: shot.fit.model, robust: shot.fit.robust },
    ...{ coverage: shot.coverage, seed: shot.seed },
  });
  if (!exit.ok) return exit;
  const { budget, exitTime } = exit.value.report;
  return success({ flight, budget, exitTimeU: exitTime.u });
}

function concluded(plan: Plan, drawn: readonly Drawn[]): Expectation {
  const budget = meanBudget(drawn.map((one) => one.budget));
  const whole = (entries: readonly BudgetEntry[]) =>
    Math.hypot(...entries.map(({ contribution }) => contribution));
  const each = drawn.map((one) => whole(one.budget));
  const counts = drawn.map(({ flight }) => flight.inView);
  const exitTimeU = rootMeanSquare(drawn.map((one) => one.exitTimeU));
  // Between the last frame with the seal whole and the first with it open, anywhere (JCGM 100:2008, 4.3.7).
  const burstU = uniformU(1 / plan.camera.rate.value / 2);
  const { contrastToNoise } = lightingAt(plan.picture.light, plan.camera.exposure.value);
  const { radius, sweep } = plannedDisc(plan, contrastToNoise);
  return {
    frames: [Math.min(...counts), Math.max(...counts)],
    radius,
    blur: sweep,
    centreU: Math.min(...drawn.flatMap(({ flight }) => flight.frames.map((f) => f.alongU))),
    speedU: whole(budget),
    speedURange: [Math.min(...each), Math.max(...each)],
    exitTimeU,
    terms: termsOf(budget),
    budget,
    advice: adviceOf(budget),
    burstU,
    leadU: Math.hypot(burstU, exitTimeU),
  };
}

/** One line a source: its contributions' root mean square over the draws; a source that a draw lacks counts as nothing there. */
function meanBudget(budgets: readonly (readonly BudgetEntry[])[]): BudgetEntry[] {
  const lines = new Map<string, { first: BudgetEntry; squares: number; uSquares: number }>();
  for (const entry of budgets.flat()) {
    const { source, contribution, u } = entry;
    const line = lines.get(source) ?? { first: entry, squares: 0, uSquares: 0 };
    line.squares += contribution ** 2;
    line.uSquares += u ** 2;
    lines.set(source, line);
  }
  return [...lines.values()].map(({ first, squares, uSquares }) => {
    const contribution = Math.sqrt(squares / budgets.length);
    const u = Math.sqrt(uSquares / budgets.length);
    return { ...first, u, contribution, sensitivity: contribution / u };
  });
}

const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);
