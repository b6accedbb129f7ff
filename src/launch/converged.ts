import { ExitframeError } from '../core/reason';
import {
  type GasDynamicsLaunch,
  type GasDynamicsOptions,
  launchByGasDynamics,
} from './gasDynamics';
import type { Launcher, MeshChange } from './types';

const FIRST_CELLS = 50;
const MOST_CELLS = 400;
/** Half the cells change the exit speed by no more than this share of it. */
const TOLERANCE = 0.002;

export interface ConvergedLaunch extends GasDynamicsLaunch {
  readonly mesh: MeshChange;
}

/** Gas dynamics on finer meshes until the exit speed stands to 0.2 %. Refuses what does not. */
export function launchConverged(
  launcher: Launcher,
  options: Omit<GasDynamicsOptions, 'cells'> = {},
): ConvergedLaunch {
  const { onProgress } = options;
  let coarse = launchByGasDynamics(launcher, {
    ...options,
    cells: FIRST_CELLS,
    // A run costs four times one of half as many cells.
    ...(onProgress && { onProgress: (share: number) => onProgress(share / 5) }),
  });
  for (let cells = 2 * FIRST_CELLS; cells <= MOST_CELLS; cells *= 2) {
    const fine = launchByGasDynamics(launcher, {
      ...options,
      cells,
      ...(onProgress && { onProgress: (share: number) => onProgress((1 + 4 * share) / 5) }),
    });
    const [a, b] = [coarse.exit, fine.exit];
    if (!a.ok && !b.ok) return { ...fine, mesh: { cells, speed: 0, lead: 0 } };
    if (a.ok && b.ok) {
      const speed = Math.abs(b.value.speed - a.value.speed);
      const lead = Math.abs(b.value.seal.lead - a.value.seal.lead);
      if (speed <= TOLERANCE * b.value.speed) {
        return { ...fine, mesh: { cells, speed, lead } };
      }
    }
    coarse = fine;
  }
  throw new ExitframeError(
    'modelNotConverged',
    `The gas dynamics still changes by more than ${100 * TOLERANCE} % with ${MOST_CELLS} cells.`,
    'Look at the launcher: a ball that hardly leaves has no settled speed.',
    { values: { change: `${100 * TOLERANCE} %`, cells: MOST_CELLS } },
  );
}
