import { launchByConstantForce } from '../../../src/launch/constantForce';
import {
  expansionDrive,
  launchByExpansion,
  simpleWavePressure,
} from '../../../src/launch/expansion';
import { launchByGasDynamics } from '../../../src/launch/gasDynamics';
import { launchBy } from '../../../src/launch/lumped';
import { launchByMomentum } from '../../../src/launch/momentum';
import type { Exit, Launch, Launcher } from '../../../src/launch/types';
import type { ClassReport, ReportRow, ValidationClass } from '../types';
import { drivenShock, fromMouth, fullBarrel } from './barrel';
import { LAUNCHER_B, TABLE, workedOver } from './launchers';
import { figureRow, largest, offBy } from './rows';

const MOST = 0.5;

const exitOf = ({ exit }: Launch): Exit => {
  if (!exit.ok) throw new Error(exit.reason.message);
  return exit.value;
};

const full = (launcher: Launcher): Launch =>
  launchBy(launcher, (gas) =>
    expansionDrive(gas, launcher.air, simpleWavePressure(gas, launcher.air)),
  );

const MODELS = [
  { name: 'constant force', model: launchByConstantForce, speed: 0, time: 0 },
  { name: 'momentum', model: launchByMomentum, speed: 1, time: null },
  { name: 'simple wave', model: full, speed: 2, time: 1 },
  { name: 'quasi-steady expansion', model: launchByExpansion, speed: 3, time: 2 },
] as const;

/** The analytic models against the tables. */
const tables = (): ReportRow[] =>
  MODELS.flatMap(({ name, model, speed, time }) => {
    const exits = TABLE.map(({ way }) => exitOf(model(workedOver(way))));
    const speeds = TABLE.map(({ speeds }, i) => offBy(exits[i]?.speed as number, speeds[speed]));
    const row = (figure: string, errors: readonly number[]) =>
      figureRow(name, figure, largest(errors), { high: MOST }, errors.length);
    if (time === null) return [row('largest error of exit speed, %', speeds)];
    const times = TABLE.map((line, i) =>
      offBy(1000 * (exits[i]?.time as number), line.times[time]),
    );
    return [
      row('largest error of exit speed, %', speeds),
      row('largest error of exit time, %', times),
    ];
  });

const FULL_CELLS = [100, 200, 400];

/** The gas dynamics against the simple wave's table: a barrel full of still air, a moving ball, no echo. */
const simpleWave = (): ReportRow[] =>
  FULL_CELLS.map((cells) => {
    const exits = fullBarrel(
      TABLE.map(({ way }) => way),
      cells,
    );
    const errors = TABLE.flatMap(({ speeds, times }, i) => [
      offBy(exits[i]?.speed as number, speeds[2]),
      offBy(1000 * (exits[i]?.time as number), times[1]),
    ]);
    return figureRow(
      'gas dynamics in a full barrel',
      'largest error of speed and time, %',
      ...[largest(errors), { high: MOST }, cells],
    );
  });

const HEAVIER = [1, 10, 100];

/** The gas dynamics nears the quasi-steady limit from below as the ball outweighs the air. */
const heavyBall = (): ReportRow[] =>
  HEAVIER.map((heavier) => {
    const light = workedOver(1);
    const limit = exitOf(launchByExpansion({ ...light, ballMass: heavier * light.ballMass })).speed;
    const below = 100 * (1 - fromMouth(heavier, 50) / limit);
    return figureRow(
      `gas dynamics, ball of ${(2.7 * heavier).toFixed(1)} g from an open mouth`,
      'below the quasi-steady limit, %',
      ...[below, heavier === HEAVIER.at(-1) ? { low: 0, high: MOST } : { low: 0 }, 50],
    );
  });

/** Ball speed m/s: Mach number of the shock ahead, its strength, and its first echo's (reference values of a piston's shock). */
const SHOCKS = [
  [50, 1.0912, 1.2225, 1.4862],
  [100, 1.19, 1.4854, 2.1596],
  [200, 1.409, 2.1494, 4.2715],
  [250, 1.5283, 2.5585, 5.8197],
  [300, 1.6536, 3.0234, 7.7693],
] as const;
const SHOCK_CELLS = 400;

/** Shocks ahead of the ball against the normal-shock relations (NACA Report 1135, 1953). */
const shocks = (): ReportRow[] =>
  SHOCKS.map(([speed, mach, strength, echo]) => {
    const found = drivenShock(speed, SHOCK_CELLS);
    const errors = [
      offBy(found.mach, mach),
      offBy(found.strength, strength),
      offBy(found.echo, echo),
    ];
    return figureRow(
      `ball at ${speed} m/s into still air`,
      'largest error of Mach number, shock and echo, %',
      ...[largest(errors), { high: MOST }, SHOCK_CELLS],
    );
  });

const SHOTS: readonly { readonly name: string; readonly launcher: Launcher }[] = [
  { name: 'teaching launcher', launcher: LAUNCHER_B },
  { name: 'tight ball', launcher: { ...LAUNCHER_B, gapDischarge: 0 } },
  { name: '10 Pa', launcher: { ...LAUNCHER_B, residualPressure: 10 } },
  { name: '10 kPa', launcher: { ...LAUNCHER_B, residualPressure: 10_000 } },
];
const SHOT_CELLS = [25, 50, 100];
const FINEST = 200;

/** Grid convergence of whole shots. */
function grid({ name, launcher }: (typeof SHOTS)[number]): ReportRow[] {
  const run = (cells: number) => exitOf(launchByGasDynamics(launcher, { cells })).speed;
  const finest = run(FINEST);
  return SHOT_CELLS.map((cells) =>
    figureRow(
      `shot, ${name}`,
      `exit speed against ${FINEST} cells, %`,
      offBy(run(cells), finest),
      cells < 50 ? {} : { high: MOST },
      cells,
      `${finest.toFixed(2)} m/s`,
    ),
  );
}

const PARTS: readonly (() => ReportRow[])[] = [
  tables,
  simpleWave,
  heavyBall,
  shocks,
  ...SHOTS.map((shot) => () => grid(shot)),
];

/** The launch models against tables, limits and finer meshes. */
export const launch: ValidationClass<readonly ReportRow[]> = {
  name: 'launch',
  chunks: PARTS.length,
  async run(chunk) {
    return PARTS[chunk]?.() ?? [];
  },
  conclude: (records): ClassReport => ({
    rows: records.flat(),
    plots: [],
    text: 'Analytic models against tables worked out apart from the program (ball of 2.7 g in a bore of 40 mm, 0.5 to 4 m, into a vacuum, 20 degrees). Gas dynamics: in a barrel full of still air, against the same table of the simple wave; from an open mouth, against the quasi-steady limit, which it may not pass and must meet for a heavy ball; ahead of a ball at constant speed, against the relations of normal shocks; whole shots of the teaching launcher (1.40 m, 31.0 mm, ball 30.0 mm and 1.90 g, leak, entrance loss, wall friction) against a finer mesh. n is the number of cells of a column, or of lines of a table. Nothing here is fitted to a measured speed.',
  }),
};
