import { describe, it } from 'vitest';
import { expectGoodPositions } from './oneKind';

describe('compressed film', () => {
  it.each([
    { what: 'H.264, CRF 29', kind: 'compression', seed: 1, most: 0.6 },
    { what: 'Motion-JPEG of low quality', kind: 'compression', seed: 2, most: 0.6 },
  ] as const)('$what', async (one) => {
    await expectGoodPositions(one);
  });
});
