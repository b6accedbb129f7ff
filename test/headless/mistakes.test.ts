import { expect, it } from 'vitest';
import { MISTAKE_SCENES } from '../../sample-clips/render/mistakes';
import { reduceScene, renderScene } from '../../scripts/mistakes/scene';
import { mistakes } from '../../src/app/mistakes';
import { isAvailable } from '../../src/core/estimate';

it('the written sizes of mistakes are what the core finds now; else npm run mistakes', async () => {
  const written = mistakes.find(({ name }) => name === 'wrongRate');
  if (written === undefined) throw new Error('not written');
  const scene = renderScene(MISTAKE_SCENES.base);
  const { exitVelocity } = await reduceScene(scene, scene.shot);
  if (!isAvailable(exitVelocity)) throw new Error(exitVelocity.unavailable.message);
  const { value, u } = written.right.speed;
  expect(Math.abs(exitVelocity.value - value)).toBeLessThan(0.3 * u);
  expect(Math.abs(exitVelocity.u / u - 1)).toBeLessThan(0.2);
  expect(written.truth.speed).toBeCloseTo(scene.stage.truth.velocity, 9);
});
