import { expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { createEstimator } from '../../../src/exit/candidate';
import { WIDE_DRAG, ZONE_PROFILES } from '../../../src/exit/drag';
import { nominalSetting, prepareFlight } from '../../../src/exit/flight';
import { drawnFrom, sharedInputs } from '../../../src/exit/inputs';
import { PARAMETERS, V0 } from '../../../src/exit/motion';
import { HIGH_SPEED, simulate } from './shots';

// The steps with a kept gain against the full solver, over draws such as those of the Monte Carlo check.
it.each([
  ['fifteen frames', HIGH_SPEED],
  ['five frames', { ...HIGH_SPEED, frames: 5 }],
] as const)('refines to within 3 % of u of the full fit, %s', (_name, shot) => {
  const { points, shared } = simulate(shot, 11);
  const nominal = nominalSetting(shared);
  const flight = prepareFlight(points, nominal);
  const inputs = sharedInputs(shared);
  const random = seededRandom(1);
  const start = Float64Array.of(flight.start.t0, flight.start.v0, 0, 0);
  for (const { profile } of ZONE_PROFILES) {
    const candidate = {
      motion: 'quadraticDrag',
      dragCoefficient: WIDE_DRAG,
      zone: profile,
    } as const;
    const kept = createEstimator(candidate, flight, nominal, 1);
    const full = createEstimator(candidate, flight, nominal, 1);
    const fit = kept.fit(nominal, start);
    if (!fit.ok) throw new Error(fit.reason.message);
    const u = Math.sqrt(fit.value.covariance[V0 * PARAMETERS + V0] as number);
    for (let trial = 0; trial < 20; trial++) {
      const setting = drawnFrom(nominal);
      for (const input of inputs) input.move(setting, input.u * random.normal());
      const theta = Float64Array.from(fit.value.theta);
      const reference = Float64Array.from(fit.value.theta);
      kept.load(setting);
      full.load(setting);
      for (let i = 0; i < points.length; i++) {
        const by = (flight.sigma[i] as number) * random.normal();
        kept.distances[i] = (kept.distances[i] as number) + by;
        full.distances[i] = (full.distances[i] as number) + by;
      }
      expect(kept.refine(theta)).toBe(true);
      // Never fitted, it has no gain to step with and solves anew.
      expect(full.refine(reference)).toBe(true);
      expect(Math.abs((theta[V0] as number) - (reference[V0] as number)) / u).toBeLessThan(0.03);
    }
  }
});
