import { expect, it } from 'vitest';
import { coverageFactor } from '../../../src/core/statistics';
import { determineExit } from '../../../src/exit/determineExit';
import { HIGH_SPEED, simulate } from './shots';

const U = 0.02;
const { points, shared } = simulate(HIGH_SPEED, 21);
const exactly = ({ value }: { value: number }) => ({ value, u: 0 });

// One scale source so poorly known that it alone makes the interval: the trials must have the ends of the very
// distribution that the budget states. A rectangle's 95 % ends at 0.95 root 3.
it.each([
  ['normal', null, coverageFactor(0.95, null)],
  ['rectangular', null, 0.95 * Math.sqrt(3)],
  ['student', 4, coverageFactor(0.95, 4)],
] as const)('a %s input is drawn as its line of the budget says', (spread, dof, factor) => {
  const exit = determineExit(
    points,
    {
      ...shared,
      scaleSources: [{ source: 'known length', type: 'B', u: U, dof, spread }],
      clockSources: [],
      muzzleU: 0,
      ballDiameter: exactly(shared.ballDiameter),
      ballMass: exactly(shared.ballMass),
      airDensity: exactly(shared.airDensity),
    },
    { model: 'auto', robust: true, coverage: 0.95, seed: 1 },
  );
  if (!exit.ok) throw new Error(exit.reason.message);
  const { budget, exitVelocity, monteCarlo } = exit.value;
  expect(budget.find(({ source }) => source === 'known length')?.distribution).toBe(spread);
  if (!('interval' in monteCarlo)) throw new Error(monteCarlo.unavailable.message);
  const [low, high] = monteCarlo.interval;
  const half = (high - low) / 2;
  // Some thousand trials leave the ends a few percent; the distributions differ by 19 and 42 %.
  expect(Math.abs(half / (factor * U * exitVelocity.value) - 1)).toBeLessThan(0.07);
});
