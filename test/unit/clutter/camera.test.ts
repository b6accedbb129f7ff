import { describe, it } from 'vitest';
import { expectGoodPositions } from './oneKind';

describe('what lamp and camera do', () => {
  it.each([
    { what: 'a lamp that flickers with the mains', kind: 'flicker', seed: 1, most: 0.3 },
    { what: 'hot, dead and blinking pixels under the path', kind: 'pixels', seed: 1, most: 0.3 },
    { what: 'a camera that trembles', kind: 'shake', seed: 1, most: 0.3 },
  ] as const)('$what', async (one) => {
    await expectGoodPositions(one);
  });
});
