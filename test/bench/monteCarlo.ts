import { budgetExit } from '../../src/exit/determineExit';
import { sharedInputs } from '../../src/exit/inputs';
import { exitTrial } from '../../src/exit/trials';
import type { FlightPoint } from '../../src/exit/types';
import type { FitChoice } from '../../src/shot/schema';
import { HIGH_SPEED, simulate } from '../unit/exit/shots';

const FRAMES = 30;
const TRIALS = 20_000;
const ROUNDS = 5;
/** Trials before the clock starts, so that the code is compiled. */
const WARM_UP = 5000;

const CASES: readonly {
  readonly name: string;
  readonly model: FitChoice;
  readonly robust: boolean;
}[] = [
  { name: 'constant deceleration', model: 'constantAcceleration', robust: false },
  { name: 'quadratic drag', model: 'quadraticDrag', robust: false },
  { name: 'quadratic drag, robust', model: 'quadraticDrag', robust: true },
  { name: 'averaged', model: 'averaged', robust: true },
];

/** Core time of one trial of the Monte Carlo check on a shot of 30 points, us. */
export function monteCarlo(say: (line: string) => void): void {
  const { points, shared } = simulate({ ...HIGH_SPEED, frames: FRAMES, rate: 36_000 }, 5);
  const spoiled = points.map(
    (point, i): FlightPoint => (i === 12 ? { ...point, along: point.along + 0.3 } : point),
  );
  say(`Core time of a trial, ${FRAMES} points, ${TRIALS} trials ${ROUNDS} times, us:`);
  for (const { name, model, robust } of CASES) {
    const exit = budgetExit(robust ? spoiled : points, shared, {
      model,
      robust,
      coverage: 0.95,
      seed: 1,
    });
    if (!exit.ok) throw new Error(exit.reason.message);
    const { choice, flight, nominal, unmodelled } = exit.value;
    const trial = exitTrial(choice, flight, nominal, sharedInputs(shared), unmodelled, 1);
    const times = Array.from({ length: ROUNDS }, (_, round) => {
      if (round === 0) for (let i = 0; i < WARM_UP; i++) trial();
      const before = process.cpuUsage();
      for (let i = 0; i < TRIALS; i++) trial();
      const { user, system } = process.cpuUsage(before);
      return (user + system) / TRIALS;
    }).sort((a, b) => a - b);
    const text = (value: number | undefined) => (value ?? 0).toFixed(1).padStart(5);
    say(
      `${name.padEnd(24)} min ${text(times[0])}  median ${text(times[ROUNDS >> 1])}  max ${text(times.at(-1))}  (${choice.members.length} versions)`,
    );
  }
}
