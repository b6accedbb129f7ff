import { describe, it } from 'vitest';
import { expectGoodPositions } from './oneKind';

describe('a partly hidden ball', () => {
  it.each([
    { what: 'the edge of the picture along the flight', kind: 'frameCut', seed: 1, most: 0.3 },
    { what: 'a post before the flight', kind: 'post', seed: 1, most: 0.3 },
  ] as const)('$what', async (one) => {
    await expectGoodPositions(one);
  });
});
