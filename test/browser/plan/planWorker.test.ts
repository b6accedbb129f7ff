import { proxy, wrap } from 'comlink';
import { afterAll, describe, expect, it } from 'vitest';
import { FIRST_PLAN, FIRST_TRADE } from '../../../src/app/firstPlan';
import { carryReasons } from '../../../src/protocol/errors';
import type { PlanApi } from '../../../src/protocol/plan';
import { QUESTION } from '../../fixtures/comparison';

carryReasons();
const worker = new Worker(new URL('../../../workers/plan.worker.ts', import.meta.url), {
  type: 'module',
});
const api = wrap<PlanApi>(worker);
afterAll(() => worker.terminate());

describe('the thread of the planner', () => {
  it('judges a plan', async () => {
    const { told, checks, shot } = await api.judge(FIRST_PLAN);
    expect(told.ok && told.value.speedU).toBeGreaterThan(0.1);
    expect(checks).toEqual([]);
    expect(shot.ok).toBe(true);
  });

  it('sweeps and tells how far it is', async () => {
    const shares: number[] = [];
    const swept = await api.sweep(
      { plan: FIRST_PLAN, trade: FIRST_TRADE, rates: [6000, 12_000], fields: [0.3] },
      proxy((share: number) => void shares.push(share)),
    );
    expect(swept.cells).toHaveLength(2);
    await expect.poll(() => shares).toEqual([0.5, 1]);
  });

  it('carries over why a launcher is refused', async () => {
    const launcher = { ...QUESTION.launcher, ballDiameter: 0.04 };
    const ignore = proxy(() => {});
    await expect(
      api.speed({ ...QUESTION, launcher, model: 'momentum' }, ignore),
    ).rejects.toMatchObject({ code: 'badLauncher' });
  });
});
