import { MODELS } from '../launch/models';
import { uniformU } from '../uncertainty/quantity';
import {
  type Common,
  distinctLaunchers,
  type FittedShot,
  launcherKey,
  movedBy,
  type Results,
  resultsOf,
  type SeriesFitQuestion,
} from './seriesCurve';

/** What a model's quick runs lack to its best ones, m/s and s, and what those still change by on a finer mesh. */
export interface FinerRuns {
  readonly corrections: ReadonlyMap<string, Results>;
  /** By launcher, m/s. */
  readonly meshSpeed: ReadonlyMap<string, number>;
}

/**
 * The best and the quick run of every launcher as the solver's numbers have it, counted from none. A model whose quick
 * runs are its best needs neither. Throws `modelNotConverged`.
 */
export function finerRuns(
  { model, shots }: SeriesFitQuestion,
  commons: readonly Common[],
  numbers: ArrayLike<number>,
): FinerRuns {
  const { run, varied } = MODELS[model];
  const corrections = new Map<string, Results>();
  const meshSpeed = new Map<string, number>();
  if (run === varied) return { corrections, meshSpeed };
  for (const [text, stated] of distinctLaunchers(shots)) {
    const launcher = movedBy(commons, numbers, stated);
    const best = run(launcher);
    const [[speed, lead], [quickSpeed, quickLead]] = [resultsOf(best), resultsOf(varied(launcher))];
    corrections.set(text, [speed - quickSpeed, lead - quickLead]);
    meshSpeed.set(text, best.mesh?.speed ?? 0);
  }
  return { corrections, meshSpeed };
}

/** The shots with the mesh's error shared by those of one launcher. */
export const withMeshError = (
  shots: readonly FittedShot[],
  { meshSpeed }: FinerRuns,
): readonly FittedShot[] =>
  shots.map((shot) => {
    const text = launcherKey(shot);
    const change = meshSpeed.get(text) ?? 0;
    const effect = { key: `mesh ${text}`, effect: uniformU(change) };
    return change > 0 ? { ...shot, shared: [...shot.shared, effect] } : shot;
  });

/** Whether corrections moved by no more than a share of what the shots are known to. */
export function settled(
  before: FinerRuns,
  after: FinerRuns,
  shots: readonly FittedShot[],
  share: number,
): boolean {
  return shots.every((shot) => {
    const text = launcherKey(shot);
    const [a, b] = [before, after].map(({ corrections }) => corrections.get(text) ?? [0, 0]) as [
      Results,
      Results,
    ];
    const leadU = shot.lead?.u ?? Number.POSITIVE_INFINITY;
    return Math.abs(b[0] - a[0]) <= share * shot.speed.u && Math.abs(b[1] - a[1]) <= share * leadU;
  });
}
