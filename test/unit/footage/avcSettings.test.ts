import { readFile } from 'node:fs/promises';
import { expect, it } from 'vitest';
import { avcSettings } from '../../../src/footage/webcodecs/avcSettings';

/** The decoder configuration record of an MP4 file. */
async function recordOf(name: string): Promise<Uint8Array> {
  const file = await readFile(`test/fixtures/breadth/${name}`);
  const at = file.indexOf('avcC');
  return new Uint8Array(file.subarray(at + 4, at - 4 + file.readUInt32BE(at - 4)));
}

it.each([
  ['h264.mp4', { mayBeInterlaced: false, isLimited: false }],
  ['h264-444.mp4', { mayBeInterlaced: false, isLimited: false }],
  ['oblong.mp4', { mayBeInterlaced: false, isLimited: false }],
  ['full.mp4', { mayBeInterlaced: false, isLimited: false }],
  ['limited.mp4', { mayBeInterlaced: false, isLimited: true }],
  ['fields.mp4', { mayBeInterlaced: true, isLimited: false }],
])('reads of %s that it is %j', async (name, told) => {
  expect(avcSettings(await recordOf(name))).toEqual(told);
});

it('says nothing of a record that is damaged or empty', async () => {
  const record = await recordOf('limited.mp4');
  expect(avcSettings(new Uint8Array())).toBeNull();
  expect(avcSettings(record.subarray(0, 12))).toBeNull();
  const zeros = record.slice().fill(0, 12);
  expect(avcSettings(zeros)).toBeNull();
});
