import { ExitframeError } from '../core/reason';
import {
  type GasDynamicsLaunch,
  type GasDynamicsOptions,
  launchByGasDynamics,
} from './gasDynamics';
import type { Launcher } from './types';

const FIRST_CELLS = 50;
const MOST_CELLS = 400;
/** Half the cells change the exit speed by no more than this share of it. */
const TOLERANCE = 0.002;

export interface ConvergedLaunch extends GasDynamicsLaunch {
  readonly grid: {
    readonly cells: number;
    /**
     * Change of the exit speed and of the seal's opening from half as many cells, m/s and s. The error of a scheme of
     * first order or better is no larger; 0 where the ball does not leave.
     */
    readonly speedChange: number;
    readonly openingChange: number;
  };
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
    if (!a.ok && !b.ok) return { ...fine, grid: { cells, speedChange: 0, openingChange: 0 } };
    if (a.ok && b.ok) {
      const speedChange = Math.abs(b.value.speed - a.value.speed);
      const openingChange = Math.abs(b.value.seal.time - a.value.seal.time);
      if (speedChange <= TOLERANCE * b.value.speed) {
        return { ...fine, grid: { cells, speedChange, openingChange } };
      }
    }
    coarse = fine;
  }
  throw new ExitframeError(
    'modelNotConverged',
    `The gas dynamics still changes by more than ${100 * TOLERANCE} % with ${MOST_CELLS} cells.`,
    'Look at the launcher: a ball that hardly leaves has no settled speed.',
  );
}
