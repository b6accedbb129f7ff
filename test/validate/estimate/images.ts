import { median } from '../../../src/core/statistics';
import { budgetExit } from '../../../src/exit/determineExit';
import { concludeShot } from '../../../src/reduction/concludeShot';
import { layOut } from '../../../src/reduction/layOut';
import { type MeasuredFilm, measureFilm } from '../../../src/reduction/measureFilm';
import { createMeasurer } from '../../../src/reduction/measurer';
import { setScene } from '../../../src/reduction/scene';
import { sharedInputs } from '../../../src/reduction/sharedInputs';
import type { ReductionInputs } from '../../../src/reduction/types';
import { shareRow } from '../figures';
import { randomStream } from '../render/random';
import { medianLimits, rootMeanSquare } from '../statistics';
import type { ReportRow, ValidationClass } from '../types';
import { type Build, takeImages } from './imagesShot';

/** Sets its random numbers apart from other classes'. */
const KEY = 13;
const SHOTS_A_CHUNK = 10;
const CHUNKS = 100;
/** Chunks of which one has its first shot reduced whole; odd, so that both builds have their turn. */
const WHOLE_EVERY = 3;
/** Chunks in turn. */
const BUILDS: readonly Build[] = ['solid', 'hollow'];
/** How well the depth of the known length is stated, m, with the limit of the median relative error, %. */
const DEPTHS = [
  { u: 0.002, most: 0.15 },
  { u: 0, most: 0.08 },
] as const;
const LIMIT = { low: 93, high: 97 };
const MOST_REFUSED = 2;
const MOST_U_OVER_ERROR = 1.5;

/** One reduction. Relative figures, in per cent. */
interface Outcome {
  readonly refused: string | null;
  readonly error: number;
  readonly u: number;
  readonly held: boolean;
}

interface Chunk {
  readonly build: Build;
  /** One list a depth. */
  readonly outcomes: readonly (readonly Outcome[])[];
  /** Of the chunk's first shot where it is reduced whole, else 0: largest difference of an end of the interval to that told without trials, in u. */
  readonly trialsMove: number;
}

/** Exit velocity of small films, from the pixels on, as the program reduces them. */
export const images: ValidationClass<Chunk> = {
  name: 'images',
  chunks: CHUNKS,
  async run(chunk, seed) {
    const build = BUILDS[chunk % BUILDS.length] as Build;
    const measurer = createMeasurer();
    const outcomes: Outcome[][] = DEPTHS.map(() => []);
    let trialsMove = 0;
    for (let i = 0; i < SHOTS_A_CHUNK; i++) {
      const random = randomStream(seed, KEY, chunk, i);
      const { frames, inputs, velocity } = takeImages(
        build,
        DEPTHS.map(({ u }) => u),
        random,
      );
      const film = {
        async *frames({ start, end, step = 1 }: { start: number; end: number; step?: number }) {
          for (let k = start; k < Math.min(end, frames.length); k += step) {
            const frame = frames[k];
            if (frame !== undefined) yield frame;
          }
        },
      };
      // Pixels are measured once: how deep the bar lies changes the radius looked for by a thousandth at most.
      const [first] = inputs;
      if (first === undefined) throw new Error('No shot was stated.');
      const ignore = () => {};
      const measured = await measureFilm(
        first,
        film,
        measurer,
        ignore,
        new AbortController().signal,
      );
      for (const [k, one] of inputs.entries())
        outcomes[k]?.push(outcomeOf(one, measured, velocity));
      if (i === 0 && chunk % WHOLE_EVERY === 0) trialsMove = moveByTrials(first, measured);
    }
    return { build, outcomes, trialsMove };
  },
  conclude(records) {
    const moved = Math.max(...records.map(({ trialsMove }) => trialsMove));
    return {
      rows: DEPTHS.flatMap(({ u, most }, k) => {
        const depth = `depth known to ${1000 * u} mm`;
        const of = (build: Build) =>
          records.filter((one) => one.build === build).flatMap(({ outcomes }) => outcomes[k] ?? []);
        return [
          ...coverageRows(depth, BUILDS.flatMap(of)),
          ...errorRows(`solid ball, ${depth}`, of('solid'), { high: most }),
          ...errorRows(`hollow ball, ${depth}`, of('hollow'), {}),
        ];
      }),
      plots: [],
      text: `${CHUNKS * SHOTS_A_CHUNK} films of 256 x 64 to 320 x 96 px at 12 000 frames/s, ball radius 8 to 12 px, 80 to 200 m/s, contrast-to-noise 12 to 40, measured from the pixels on, the ball's outline in the camera's perspective; each concluded with both statements of how deep the bar lies. Drawn from what is stated: the 200 mm length (0.05 mm), its end points (0.05 px each), its depth, camera distance (20 mm), recording rate, exposure (2.5 %), ball diameter (0.05 mm) and mass, air, place of the muzzle (0.3 px), drag, loss and length of the muzzle zone. Half of the balls are solid plastic, half the scenario's hollow one; what the hollow one loses in the muzzle zone is known so poorly beforehand that its speed is, too, and its error is for information. The Monte Carlo check, which takes most of a reduction's time, is left out; one film in ${WHOLE_EVERY * SHOTS_A_CHUNK} is reduced with it as well, which moved an end of the interval by ${moved.toFixed(2)} u at most.`,
    };
  },
};

/** The exit velocity as `concludeShot` tells it before its Monte Carlo check. */
function exitOf(inputs: ReductionInputs, measured: MeasuredFilm) {
  const { shot } = inputs;
  const scene = setScene(inputs);
  const { travel, metresPerPixel, points } = layOut(inputs, scene, measured);
  if (!points.ok) return points;
  const exit = budgetExit(points.value, sharedInputs(shot, scene, metresPerPixel, travel), {
    model: shot.fit.model,
    robust: shot.fit.robust,
    coverage: shot.coverage,
    seed: shot.seed,
  });
  return exit.ok ? { ok: true as const, value: exit.value.report.exitVelocity } : exit;
}

function outcomeOf(inputs: ReductionInputs, measured: MeasuredFilm, truth: number): Outcome {
  const exit = exitOf(inputs, measured);
  if (!exit.ok) return { refused: exit.reason.code, error: 0, u: 0, held: false };
  const { value, u, interval } = exit.value;
  return {
    refused: null,
    error: 100 * (value / truth - 1),
    u: (100 * u) / truth,
    held: interval[0] <= truth && truth <= interval[1],
  };
}

function moveByTrials(inputs: ReductionInputs, measured: MeasuredFilm): number {
  const plain = exitOf(inputs, measured);
  const { exitVelocity } = concludeShot(inputs, measured).result;
  if (!plain.ok || !('value' in exitVelocity)) return 0;
  const { u, interval } = plain.value;
  return Math.max(...interval.map((end, i) => Math.abs(end - (exitVelocity.interval[i] ?? 0)) / u));
}

const told = (all: readonly Outcome[]): Outcome[] => all.filter(({ refused }) => refused === null);

function coverageRows(of: string, all: readonly Outcome[]): ReportRow[] {
  return [
    shareRow(
      of,
      'refused',
      all.map(({ refused }) => refused !== null),
      { high: MOST_REFUSED },
    ),
    shareRow(
      of,
      '95 % interval holds the true velocity',
      told(all).map(({ held }) => held),
      LIMIT,
    ),
  ];
}

function errorRows(of: string, all: readonly Outcome[], limit: ReportRow['limit']): ReportRow[] {
  const seen = told(all);
  const n = seen.length;
  const middle = (pick: (one: Outcome) => number) => (n === 0 ? Infinity : median(seen.map(pick)));
  const error = middle((one) => Math.abs(one.error));
  const row = (
    figure: string,
    value: number,
    unit: ReportRow['unit'],
    most: ReportRow['limit'],
  ): ReportRow => ({
    ...{ of, figure, value, unit, limit: most, n },
    passed: n > 0 && value <= (most.high ?? value),
  });
  const middleU = middle((one) => one.u);
  const [low, high] = medianLimits(seen.map((one) => Math.abs(one.error)));
  const limits95 = [middleU / high, middleU / low] as const;
  return [
    row('median relative error', error, '%', limit),
    {
      // A true u is 1.48 median errors: so near the limit, the limits of the ratio have to be past it to fail.
      ...row('median u over median error', middleU / error, '', { high: MOST_U_OVER_ERROR }),
      limits95,
      passed: n > 0 && limits95[0] <= MOST_U_OVER_ERROR,
    },
    row('RMS of error over u', rootMeanSquare(seen.map((one) => one.error / one.u)), '', {}),
  ];
}
