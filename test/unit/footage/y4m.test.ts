import { expect, it } from 'vitest';
import { nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';
import { requireWhole } from '../../../src/footage/wholeness';
import { inMemory } from './reading';

const [WIDTH, HEIGHT] = [35, 23] as const;

/** A film of so many bytes a frame; `marks` stand behind each frame's word. */
function film(colours: string, bytes: number, marks: readonly string[] = ['', '', '']): Uint8Array {
  const parts = [`YUV4MPEG2 W${WIDTH} H${HEIGHT} F100:1 Ip A1:1${colours}\n`];
  for (const mark of marks) parts.push(`FRAME${mark}\n`, 'a'.repeat(bytes));
  return new TextEncoder().encode(parts.join(''));
}

/** Bytes a frame, from the layout's text: planes of colour are rounded up. */
const LAYOUTS: readonly (readonly [string, number])[] = [
  ['', 35 * 23 + 2 * 18 * 12],
  [' C420jpeg', 35 * 23 + 2 * 18 * 12],
  [' C420p10 XCOLORRANGE=FULL', 2 * (35 * 23 + 2 * 18 * 12)],
  [' C422', 35 * 23 + 2 * 18 * 23],
  [' C411', 35 * 23 + 2 * 9 * 23],
  [' C444', 3 * 35 * 23],
  [' C444p12', 6 * 35 * 23],
  [' Cmono', 35 * 23],
  [' Cmono16', 2 * 35 * 23],
];

it.each(LAYOUTS)('all frames are read of a whole film of layout "%s"', async (colours, bytes) => {
  const { info } = await openFootage([inMemory('a.y4m', film(colours, bytes))], nodePlatform);
  expect(info).toMatchObject({ width: WIDTH, height: HEIGHT, frameCount: 3 });
});

it.each(LAYOUTS)(
  'one cut off in its last frame is refused, layout "%s"',
  async (colours, bytes) => {
    const whole = film(colours, bytes);
    for (const missing of [1, bytes >> 1, bytes + 3]) {
      const cut = inMemory('a.y4m', whole.subarray(0, whole.length - missing));
      await expect(openFootage([cut], nodePlatform)).rejects.toMatchObject({ code: 'truncated' });
    }
  },
);

it('frames whose words are followed by marks are walked one by one', async () => {
  const marked = film(' Cmono', 805, ['', ' Ixyz', ' It']);
  await requireWhole(inMemory('a.y4m', marked));
  await expect(
    requireWhole(inMemory('a.y4m', marked.subarray(0, marked.length - 1))),
  ).rejects.toMatchObject({
    code: 'truncated',
    values: { stated: marked.length, there: marked.length - 1 },
  });
});

it('what stands where a frame should begin is told of', async () => {
  const broken = new Uint8Array([...film(' Cmono', 805), ...new Uint8Array(200).fill(66)]);
  await expect(requireWhole(inMemory('a.y4m', broken))).rejects.toMatchObject({
    code: 'brokenParts',
  });
});

it('colours that are not known, and heads without an end, are left to the decoder', async () => {
  await requireWhole(inMemory('a.y4m', film(' Cxyz', 10)));
  await requireWhole(inMemory('a.y4m', new TextEncoder().encode(`YUV4MPEG2 ${'W'.repeat(3000)}`)));
});
