import { launchByGasDynamics } from '../../../src/launch/gasDynamics';
import type { ClassReport, ValidationClass } from '../types';
import { closedBarrel } from './barrel';
import { LAUNCHER_B } from './launchers';
import { figureRow } from './rows';

const MOST = 1e-10;
const CLOSED = [
  { name: 'closed ends, tight ball', gap: 0 },
  { name: 'closed ends, leak of 3 % of the bore', gap: 0.03 },
];
const CELLS = [50, 100, 200];
const SHOT_CELLS = 50;

interface Kept {
  readonly of: string;
  readonly cells: number;
  readonly mass: number;
  readonly energy: number;
  readonly note?: string;
}

/** Mass, and energy of gas and ball: kept, whatever the ball does. */
export const conservation: ValidationClass<Kept> = {
  name: 'conservation',
  chunks: CLOSED.length * CELLS.length + 1,
  async run(chunk) {
    const kind = CLOSED[Math.floor(chunk / CELLS.length)];
    if (kind === undefined) {
      const { imbalance } = launchByGasDynamics(LAUNCHER_B, { cells: SHOT_CELLS });
      return { of: 'a whole shot, with what came in', cells: SHOT_CELLS, ...imbalance };
    }
    const cells = CELLS[chunk % CELLS.length] as number;
    const { mass, energy, turns } = closedBarrel(kind.gap, cells);
    return { of: kind.name, cells, mass, energy, note: `the ball turns ${turns} times` };
  },
  conclude: (records): ClassReport => ({
    rows: records.flatMap(({ of, cells, mass, energy, note }) => [
      figureRow(of, 'mass lacking', mass, { high: MOST }, cells, note),
      figureRow(of, 'energy of gas and ball lacking', energy, { high: MOST }, cells, note),
    ]),
    plots: [],
    text: 'A ball without friction between air of four atmospheres behind and one ahead, in a barrel of 1 m with both ends closed, for 30 ms: it flies to and fro, shocks run between it and the ends. What mass of gas, and what energy of gas and ball, is lacking at the end, as shares. Last a shot of the teaching launcher, with leak and wall friction, its mouth and muzzle open: what its account of what came in and went out lacks.',
  }),
};
