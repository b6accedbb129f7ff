import { type Random, seededRandom } from '../core/random';
import { standardDraw, studentScale } from '../uncertainty/draw';
import type { Member } from './average';
import type { Choice } from './choice';
import { dragOf, muzzleLossOf } from './drag';
import type { Flight, Setting } from './flight';
import { drawnFrom, restore, type SharedInput } from './inputs';
import { PARAMETERS, V0 } from './motion';

/**
 * One trial of the measurement model for the exit speed (JCGM 101:2008, clause 7): every shared input, every
 * centre and frame time and what is known of drag and muzzle loss are drawn, one member is taken with the
 * chance of its weight, and it is fitted anew; `unmodelled` (m/s) stands for what no member knows of. Null where
 * that fit fails. A trial allocates nothing.
 */
export function exitTrial(
  choice: Choice,
  flight: Flight,
  nominal: Setting,
  inputs: readonly SharedInput[],
  unmodelled: number,
  seed: number,
): () => number | null {
  const random = seededRandom(seed);
  const { members, sigmaScale, noiseDof } = choice;
  const n = flight.points.length;
  const enlarged = (i: number) => sigmaScale / Math.sqrt(flight.weights[i] as number);
  const placeU = Float64Array.from(flight.points, ({ alongU }, i) => alongU * enlarged(i));
  const timeU = Float64Array.from(flight.points, ({ timeU }, i) => timeU * enlarged(i));
  const jitters = timeU.some((u) => u > 0);
  const lossU = muzzleLossOf(nominal).u;
  const theta = new Float64Array(PARAMETERS);
  const drawn = drawnFrom(nominal);
  // Time stamps are rounded; a scatter larger than stated comes from elsewhere as well.
  const timeSpread = noiseDof === null ? 'rectangular' : 'normal';
  return () => {
    restore(drawn, nominal);
    for (const input of inputs) input.move(drawn, input.u * draw(random, input));
    const { estimator, fit } = pick(members, random.uniform());
    estimator.load(drawn);
    const { times, distances, expected } = estimator;
    const scatter = studentScale(random, noiseDof);
    const metres = scatter * drawn.metresPerPixel;
    for (let i = 0; i < n; i++) {
      distances[i] = (distances[i] as number) + metres * (placeU[i] as number) * random.normal();
    }
    if (jitters) {
      for (let i = 0; i < n; i++) {
        times[i] =
          (times[i] as number) +
          scatter * (timeU[i] as number) * standardDraw(random, timeSpread, null);
      }
    }
    const { dragCoefficient } = estimator.candidate;
    if (dragCoefficient) {
      const { u, spread } = dragCoefficient;
      expected.drag += dragOf(drawn, u) * standardDraw(random, spread, null);
    }
    expected.loss += lossU * random.normal();
    theta.set(fit.theta);
    return estimator.refine(theta) ? (theta[V0] as number) + unmodelled * random.normal() : null;
  };
}

function pick(members: readonly Member[], share: number): Member {
  let sum = 0;
  for (const member of members) {
    sum += member.weight;
    if (share < sum) return member;
  }
  return members[members.length - 1] as Member;
}

const draw = (random: Random, { spread, dof }: SharedInput): number =>
  standardDraw(random, spread, dof);
