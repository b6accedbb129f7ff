import { proxy, wrap } from 'comlink';
import { afterAll, describe, expect, it } from 'vitest';
import type { ComparisonPart, ComparisonQuestion } from '../../../src/compare/compareModels';
import { carryReasons } from '../../../src/protocol/errors';
import type { LaunchApi } from '../../../src/protocol/launch';
import { QUESTION } from '../../fixtures/comparison';

carryReasons();
const worker = new Worker(new URL('../../../workers/launch.worker.ts', import.meta.url), {
  type: 'module',
});
const api = wrap<LaunchApi>(worker);
afterAll(() => worker.terminate());

const ask = (question: ComparisonQuestion) => {
  const parts: ComparisonPart[] = [];
  const shares: number[] = [];
  const asked = api.compare(
    question,
    proxy((part: ComparisonPart) => void parts.push(part)),
    proxy((share: number) => void shares.push(share)),
  );
  return { parts, shares, asked };
};

describe('the thread of the launch models', () => {
  it('tells every part, gas and all', async () => {
    const { parts, shares, asked } = ask(QUESTION);
    await asked;
    await expect.poll(() => shares.at(-1)).toBeCloseTo(1, 9);
    expect(parts).toHaveLength(8);
    const gas = parts.find(({ kind, model }) => kind === 'prediction' && model === 'gasDynamics');
    if (gas?.kind !== 'prediction' || !gas.told.ok) throw new Error('no gas dynamics');
    // The same launcher as in docs/validation-model.md, which has 197.96 m/s.
    expect(gas.told.value.speed.quantity.value).toBeCloseTo(197.96, 0);
    expect(gas.told.value.profiles?.[0]?.pressure).toBeInstanceOf(Float32Array);
  });

  it('carries over why a launcher is refused', async () => {
    const launcher = { ...QUESTION.launcher, ballDiameter: 0.04 };
    await expect(ask({ ...QUESTION, launcher }).asked).rejects.toMatchObject({
      code: 'badLauncher',
      remedy: expect.any(String),
    });
  });
});
