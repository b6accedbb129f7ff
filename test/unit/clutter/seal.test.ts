import { describe, expect, it } from 'vitest';
import { expectGoodPositions } from './oneKind';

describe('what is left of the seal', () => {
  it.each([
    { what: 'fragments before, behind and beside the ball', kind: 'fragments', seed: 1, most: 0.3 },
    { what: 'a drifting cloud of mist over the ball', kind: 'haze', seed: 3, most: 0.6 },
  ] as const)('$what', async (one) => {
    await expectGoodPositions(one);
  });
});

describe('a ball that breaks up', () => {
  it('is used up to the break, which is reported', async () => {
    const { brokenFrom, reportedBreak } = await expectGoodPositions({
      kind: 'breakUp',
      seed: 3,
      most: 0.3,
    });
    expect(brokenFrom).not.toBeNull();
    expect(reportedBreak).toBe(brokenFrom);
  });
});
