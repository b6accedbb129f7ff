import type { BudgetEntry } from '../shot/result';
import { entry } from '../uncertainty/budget';
import { type Spread, usualSpread } from '../uncertainty/draw';
import { type Average, type Member, refitAt } from './average';
import type { Choice } from './choice';
import type { ZoneProfile } from './drag';
import type { Flight, Setting } from './flight';
import { type SharedInput, shifted } from './inputs';
import { DRAG, LOSS, PARAMETERS } from './motion';

/** What moving one shared input by its standard uncertainty, up and down, does to every member's parameters. */
export interface Response {
  readonly input: SharedInput;
  readonly up: readonly Float64Array[];
  readonly down: readonly Float64Array[];
}

/** Central differences of the whole estimator by every shared input; null where one has no fit on both sides. */
export function responses(
  members: readonly Member[],
  nominal: Setting,
  inputs: readonly SharedInput[],
): Response[] | null {
  const found: Response[] = [];
  for (const input of inputs) {
    const up = refitAt(members, shifted(nominal, input, input.u));
    const down = refitAt(members, shifted(nominal, input, -input.u));
    if (up === null || down === null) return null;
    found.push({ input, up, down });
  }
  return found;
}

/** Weighted mean of one parameter over the members. */
const mix = (members: readonly Member[], thetas: readonly Float64Array[], index: number): number =>
  members.reduce((sum, { weight }, m) => sum + weight * (thetas[m]?.[index] as number), 0);

/**
 * Budget of one parameter (exit time or speed; `unit` its unit). The fit's own variance is split in the order
 * muzzle loss, drag, centres: what the first two are not known to, then what would be left if they were known.
 */
export function exitBudget(
  index: number,
  unit: string,
  flight: Flight,
  choice: Choice,
  mean: Average,
  shared: readonly Response[],
): BudgetEntry[] {
  const { members, noiseDof } = choice;
  const c = (a: number, b: number) => mean.within[a * PARAMETERS + b] as number;
  const zone = slopeOn(c(index, LOSS), c(LOSS, LOSS));
  const dragVariance = c(DRAG, DRAG) - slopeOn(c(DRAG, LOSS), c(LOSS, LOSS)) * c(DRAG, LOSS);
  const drag = slopeOn(c(index, DRAG) - zone * c(DRAG, LOSS), dragVariance);
  const noise = Math.max(
    0,
    c(index, index) - zone ** 2 * c(LOSS, LOSS) - drag ** 2 * Math.max(0, dragVariance),
  );
  const centreU = rms(flight.points.map((p) => p.alongU)) * choice.sigmaScale;
  const timeU = rms(flight.points.map((p) => p.timeU)) * choice.sigmaScale;
  const centres = Math.sqrt(noise * (1 - flight.timeShare));
  const times = Math.sqrt(noise * flight.timeShare);
  const entries = [entry('ball centres', 'A', centreU, 'px', centres / centreU, noiseDof)];
  if (times > 0) {
    const [type, spread] =
      noiseDof === null ? (['B', 'rectangular'] as const) : (['A', 'student'] as const);
    entries.push(entry('frame times', type, timeU, 's', times / timeU, noiseDof, spread));
  }
  const { expectedU, candidate } = choice.best.estimator;
  const fitted = (
    source: string,
    variance: number,
    known: number,
    at: string,
    slope: number,
    before: Spread,
  ) => {
    if (slope === 0 || !(variance > 0)) return;
    // Film and expectation weigh by their information: so much of the variance is the film's noise, the rest what the
    // expectation is wrong by. Only the first has the noise's degrees of freedom.
    const seen = Number.isFinite(known) ? Math.max(0, 1 - variance / known ** 2) : 1;
    const part = (how: string, type: 'A' | 'B', share: number, spread: Spread) => {
      const dof = type === 'A' ? noiseDof : null;
      const u = Math.sqrt(variance * share);
      if (u > 0) entries.push(entry(`${source} ${how}`, type, u, at, slope, dof, spread));
    };
    part('as filmed', 'A', seen, usualSpread(noiseDof));
    part('as expected', 'B', 1 - seen, before);
  };
  const dragBefore = candidate.dragCoefficient?.spread ?? 'normal';
  fitted('air drag', dragVariance, expectedU.drag, '1/m', drag, dragBefore);
  fitted('loss in the muzzle zone', c(LOSS, LOSS), expectedU.loss, '1', zone, 'normal');
  const { shape, model } = spread(members, index);
  if (shape > 0)
    entries.push(entry('shape of the muzzle zone', 'B', shape, unit, 1, null, 'discrete'));
  if (model > 0) entries.push(entry('choice of model', 'B', model, unit, 1, null, 'discrete'));
  const causes = shared.map(({ input: { source, type, u, unit, dof, spread }, up, down }) =>
    entry(
      source,
      type,
      u,
      unit,
      (mix(members, up, index) - mix(members, down, index)) / (2 * u),
      dof,
      spread,
    ),
  );
  return [...entries, ...oneLineEach(causes)];
}

/** Independent causes of one name (the corners of a plane) on one line, their effects added in quadrature. */
function oneLineEach(causes: readonly BudgetEntry[]): BudgetEntry[] {
  const lines = new Map<string, BudgetEntry>();
  for (const cause of causes) {
    const { source, type, u, unit, dof, distribution } = cause;
    const before = lines.get(source);
    if (before === undefined) {
      lines.set(source, cause);
      continue;
    }
    const sensitivity = Math.hypot(before.sensitivity, cause.sensitivity);
    lines.set(source, entry(source, type, u, unit, sensitivity, dof, distribution));
  }
  return [...lines.values()];
}

/** Standard deviations of a parameter between zones, and between versions of the equation within each. */
function spread(members: readonly Member[], index: number): { shape: number; model: number } {
  const parameterOf = ({ fit }: Member) => fit.theta[index] as number;
  const overall = weightedMean(members, parameterOf);
  const byZone = new Map<ZoneProfile | null, Member[]>();
  for (const member of members) {
    const { zone } = member.fit.candidate;
    byZone.set(zone, [...(byZone.get(zone) ?? []), member]);
  }
  let shape = 0;
  let model = 0;
  for (const group of byZone.values()) {
    const centre = weightedMean(group, parameterOf);
    for (const member of group) {
      shape += member.weight * (centre - overall) ** 2;
      model += member.weight * (parameterOf(member) - centre) ** 2;
    }
  }
  return { shape: Math.sqrt(shape), model: Math.sqrt(model) };
}

function weightedMean(members: readonly Member[], parameterOf: (member: Member) => number): number {
  let sum = 0;
  let weights = 0;
  for (const member of members) {
    sum += member.weight * parameterOf(member);
    weights += member.weight;
  }
  return sum / weights;
}

/** Regression slope from covariance and variance; 0 where nothing varies. */
const slopeOn = (covariance: number, variance: number): number =>
  variance > 0 ? covariance / variance : 0;
const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
