import { describe, it } from 'vitest';
import { expectGoodPositions } from './oneKind';

describe('what stands around the flight', () => {
  it.each([
    { what: 'the shadow of the ball on the wall', kind: 'shadow', seed: 1, most: 0.5 },
    { what: 'the reflection in a clear tube', kind: 'reflection', seed: 1, most: 0.5 },
    {
      what: 'a clear tube that dims the ball and ends part-way',
      kind: 'tubeEnd',
      seed: 2,
      most: 0.3,
    },
  ] as const)('$what', async (one) => {
    await expectGoodPositions(one);
  });
});
