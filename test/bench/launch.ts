import { launchConverged } from '../../src/launch/converged';
import { launchByGasDynamics } from '../../src/launch/gasDynamics';
import { LAUNCHER_B } from '../validate/model/launchers';

const ROUNDS = 3;
const CELLS = [50, 100, 200];

/** Core time of a shot by gas dynamics, s, by cells, and of one converged to 0.5 % of the exit speed and better. */
export function launch(say: (line: string) => void): void {
  const cases: readonly (readonly [string, () => string])[] = [
    ...CELLS.map((cells) => {
      const run = () => {
        const { exit } = launchByGasDynamics(LAUNCHER_B, { cells });
        return exit.ok ? `${exit.value.speed.toFixed(3)} m/s` : exit.reason.message;
      };
      return [`${cells} cells`, run] as const;
    }),
    [
      'converged',
      () => {
        const { exit, mesh } = launchConverged(LAUNCHER_B);
        const change = exit.ok ? (100 * mesh.speed) / exit.value.speed : 0;
        return `${mesh.cells} cells, last change ${change.toFixed(3)} % (wanted: under 3 s and 0.5 %)`;
      },
    ],
  ];
  say(`Core time of a shot by gas dynamics, s, ${ROUNDS} times:`);
  for (const [name, run] of cases) {
    let said = '';
    const times = Array.from({ length: ROUNDS }, () => {
      const before = process.cpuUsage();
      said = run();
      const { user, system } = process.cpuUsage(before);
      return (user + system) / 1e6;
    }).sort((a, b) => a - b);
    const text = (value: number | undefined) => (value ?? 0).toFixed(2).padStart(5);
    say(`${name.padEnd(12)} min ${text(times[0])}  median ${text(times[ROUNDS >> 1])}  ${said}`);
  }
}
