import { type Random, seededRandom } from '../core/random';
import { standardDraw, studentScale } from '../uncertainty/draw';
import type { Member } from './average';
import type { Choice } from './choice';
import { dragOf, muzzleLossOf } from './drag';
import type { Flight, Setting } from './flight';
import type { SharedInput } from './inputs';
import { PARAMETERS, V0 } from './motion';

/**
 * One trial of the measurement model for the exit speed (JCGM 101:2008, clause 7): every shared input, every
 * centre and frame time and what is known of drag and muzzle loss are drawn, one member is taken with the
 * chance of its weight, and it is fitted anew; `unmodelled` (m/s) stands for what no member knows of. Null where
 * that fit fails.
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
  const { points } = flight;
  const lossU = muzzleLossOf(nominal).u;
  const theta = new Float64Array(PARAMETERS);
  // Time stamps are rounded; a scatter larger than stated comes from elsewhere as well.
  const timeSpread = noiseDof === null ? 'rectangular' : 'normal';
  return () => {
    let setting = nominal;
    for (const input of inputs) setting = input.shifted(setting, input.u * draw(random, input));
    const { estimator, fit } = pick(members, random.uniform());
    estimator.load(setting);
    const noise = sigmaScale * studentScale(random, noiseDof);
    const { times, distances, expected } = estimator;
    for (let i = 0; i < points.length; i++) {
      const point = points[i] as (typeof points)[number];
      distances[i] =
        (distances[i] as number) + noise * point.alongU * setting.metresPerPixel * random.normal();
      if (point.timeU > 0) {
        times[i] =
          (times[i] as number) + noise * point.timeU * standardDraw(random, timeSpread, null);
      }
    }
    const { dragCoefficient } = estimator.candidate;
    if (dragCoefficient) expected.drag += dragOf(setting, dragCoefficient.u) * random.normal();
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
