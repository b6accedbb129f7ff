import { isAvailable } from '../../../src/core/estimate';
import { expectShot } from '../../../src/plan/expect';
import { termsOf } from '../../../src/plan/terms';
import type { TermName } from '../../../src/plan/types';
import { shareRow } from '../figures';
import { randomStream } from '../render/random';
import { rootMeanSquare } from '../statistics';
import type { ReportRow, ValidationClass } from '../types';
import { reduceClip } from './clip';
import { PLANS } from './plans';

/** Sets its random numbers apart from other classes'. */
const KEY = 17;
const CLIPS_A_PLAN = 8;
/** Films drawn by the planner, as many as the screen draws. */
const DRAWS = 16;
/** Predicted over reported. */
const LIMIT = { low: 0.75, high: 1.25 } as const;
/** Single clips that have to lie within it, per cent: what one film happens to tell of the muzzle zone scatters. */
const LEAST_WITHIN = 75;

interface Budgeted {
  /** Standard uncertainty of the exit velocity, m/s, and the parts of it that come from each origin. */
  readonly u: number;
  readonly parts: Readonly<Partial<Record<TermName, number>>>;
}

interface Clip {
  readonly plan: number;
  readonly predicted: Budgeted;
  /** Null: no exit velocity. */
  readonly reported: Budgeted | null;
}

/** What the planner predicts beside what the headless command then reports of clips made from the plan. */
export const clips: ValidationClass<Clip> = {
  name: 'clips',
  chunks: PLANS.length * CLIPS_A_PLAN,
  async run(chunk, seed) {
    const index = chunk % PLANS.length;
    const clip = PLANS[index];
    if (clip === undefined) throw new Error(`There is no plan ${index}.`);
    const expected = expectShot(clip.plan, DRAWS);
    if (!expected.ok) throw new Error(expected.reason.message);
    const { speedU, budget } = expected.value;
    const result = await reduceClip(clip, randomStream(seed, KEY, chunk));
    const { exitVelocity } = result;
    return {
      plan: index,
      predicted: { u: speedU, parts: partsOf(budget) },
      reported: isAvailable(exitVelocity)
        ? { u: exitVelocity.u, parts: partsOf(result.budget.exitVelocity) }
        : null,
    };
  },
  conclude(records) {
    return {
      rows: [
        ...PLANS.flatMap((_, index) =>
          planRows(
            index,
            records.filter(({ plan }) => plan === index),
          ),
        ),
        ...singleRows(records),
      ],
      plots: [],
      text: `Five plans (${PLANS.map(({ about }) => about).join('; ')}), ${CLIPS_A_PLAN} clips rendered from each: ball, light, blur, picture and path as planned; drag, loss and length of the muzzle zone, place of the exit between two frames, background and noise drawn. Each is written as a file (FFV1; H.264 at rate factor 23 where the plan says so) beside the shot file that the planner writes, and reduced whole as \`npm run reduce\` does. The fit term is what the film's own noise leaves open: centres, and drag and loss in the muzzle zone as filmed. What is reported is the root mean square over a plan's clips; of single clips the share within the same limits.`,
    };
  },
};

const partsOf = (budget: Parameters<typeof termsOf>[0]): Budgeted['parts'] =>
  Object.fromEntries(termsOf(budget).map(({ name, u }) => [name, u]));

interface Reduced extends Clip {
  readonly reported: Budgeted;
}

const reduced = (records: readonly Clip[]): Reduced[] =>
  records.flatMap((one) => (one.reported === null ? [] : [{ ...one, reported: one.reported }]));

const total = ({ u }: Budgeted): number => u;
const fitOf = ({ parts }: Budgeted): number => parts.fit ?? 0;

function planRows(index: number, records: readonly Clip[]): ReportRow[] {
  const clip = PLANS[index];
  const seen = reduced(records);
  const [first] = seen;
  const n = seen.length;
  const of = clip?.about ?? '';
  if (clip === undefined || first === undefined) {
    const none = { of, figure: 'clips with an exit velocity', value: 0, unit: '' } as const;
    return [{ ...none, limit: { low: CLIPS_A_PLAN }, passed: false, n }];
  }
  const row = (figure: string, pick: (one: Budgeted) => number): ReportRow => {
    const predicted = pick(first.predicted);
    const reported = rootMeanSquare(seen.map((one) => pick(one.reported)));
    const value = predicted / reported;
    return {
      ...{ of, figure, value, unit: '', limit: LIMIT, n },
      passed: n === CLIPS_A_PLAN && value >= LIMIT.low && value <= LIMIT.high,
      note: `${predicted.toPrecision(3)} / ${reported.toPrecision(3)} m/s`,
    };
  };
  const rows = [
    row('u(v), predicted over reported', total),
    row('fit term, predicted over reported', fitOf),
  ];
  return clip.fitDominated ? [...rows, dominanceRow(of, seen)] : rows;
}

/** The fit term beside the largest other one, as reported. */
function dominanceRow(of: string, seen: readonly Reduced[]): ReportRow {
  const names = [...new Set(seen.flatMap(({ reported }) => Object.keys(reported.parts)))];
  const others = names.filter((name) => name !== 'fit') as TermName[];
  const size = (name: TermName) =>
    rootMeanSquare(seen.map(({ reported }) => reported.parts[name] ?? 0));
  const value = size('fit') / Math.max(...others.map(size));
  return {
    ...{ of, figure: 'fit term over the largest other, reported', value, unit: '' },
    ...{ limit: { low: 1 }, passed: value >= 1, n: seen.length },
  };
}

function singleRows(records: readonly Clip[]): ReportRow[] {
  const seen = reduced(records);
  const within = (pick: (one: Budgeted) => number) =>
    seen.map(({ predicted, reported }) => {
      const ratio = pick(predicted) / pick(reported);
      return ratio >= LIMIT.low && ratio <= LIMIT.high;
    });
  const limit = { low: LEAST_WITHIN };
  return [
    shareRow('single clips', 'u(v) predicted within 25 %', within(total), limit),
    shareRow('single clips', 'fit term predicted within 25 %', within(fitOf), limit),
  ];
}
