import { describe, it } from 'vitest';
import { expectGoodPositions } from './oneKind';

describe('other things like a ball', () => {
  it.each([
    {
      what: 'a disc that stands still and comes and goes',
      kind: 'flickeringDisc',
      seed: 1,
      most: 0.3,
      near: 8,
    },
    { what: 'a ball that crosses the flight', kind: 'crossing', seed: 2, most: 0.3, near: 5 },
    { what: 'a smaller one that follows', kind: 'follower', seed: 1, most: 0.3, near: 8 },
  ] as const)('$what', async (one) => {
    await expectGoodPositions(one);
  });
});
