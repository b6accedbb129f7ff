import { describe, expect, it } from 'vitest';
import type { RawLayout } from '../../../src/core/film';
import { fitRaw } from '../../../src/core/rawLayout';
import { nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';
import { framesOf, inMemory } from './reading';

const LAYOUT: RawLayout = { width: 4, height: 3, bits: 8, byteOrder: 'little', skip: 5, gap: 2 };

const opening = (bytes: Uint8Array, layout: RawLayout) =>
  openFootage([inMemory('clip.raw', bytes)], nodePlatform, {
    reading: { raw: layout, fields: 'auto' },
  });

describe('headerless grey', () => {
  it.each([
    [5 + 12 * 3 + 2 * 2, { count: 3, left: 0 }],
    [5 + 12 * 3 + 2 * 3, { count: 3, left: 0 }],
    [5 + 12 * 3 + 2 * 3 + 1, { count: 3, left: 3 }],
    [5 + 11, { count: 0, left: 11 }],
    [3, { count: 0, left: 0 }],
  ])('%d bytes with a header and gaps hold %j', (size, fit) => {
    expect(fitRaw(size, LAYOUT)).toEqual(fit);
  });

  it('is refused where frames do not fill the file, with what is left over', async () => {
    await expect(opening(new Uint8Array(5 + 12 * 3 + 1), LAYOUT)).rejects.toMatchObject({
      code: 'rawMisfit',
      message: expect.stringContaining('"clip.raw"'),
    });
    await expect(opening(new Uint8Array(5 + 12), LAYOUT)).rejects.toMatchObject({
      code: 'singleFrame',
    });
  });

  it('is refused where a frame cannot be held, before anything is allocated', async () => {
    const layout: RawLayout = { ...LAYOUT, width: 65_535, height: 65_535 };
    await expect(opening(new Uint8Array(100), layout)).rejects.toMatchObject({
      code: 'impossibleSize',
    });
  });

  it('tells a wrong byte order by values with more bits than stated', async () => {
    const values = Uint16Array.from({ length: 24 }, (_, i) => 100 * i);
    const bytes = new Uint8Array(values.buffer);
    const layout: RawLayout = { ...LAYOUT, bits: 12, skip: 0, gap: 0 };
    const frames = await framesOf(await opening(bytes, layout));
    expect(frames.map(({ data }) => [...data])).toEqual([
      [...values.slice(0, 12)],
      [...values.slice(12)],
    ]);
    expect(frames[0]?.white).toBe(4095);
    const swapped = await opening(bytes, { ...layout, byteOrder: 'big' });
    await expect(framesOf(swapped)).rejects.toMatchObject({ code: 'rawBeyondBits' });
  });
});
