import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fileOf } from '../../../src/app/keeping/fileHandles';
import {
  COPIED_UP_TO,
  copyFootage,
  dropCopies,
  findFootage,
  isWorthCopying,
  withoutCopy,
} from '../../../src/app/keeping/footage';

const root = () => navigator.storage.getDirectory();
const film = (name: string, text = 'film') => ({ name, blob: new Blob([text]) });
const signal = new AbortController().signal;
const textsOf = async (files: readonly { blob: Blob }[] | null) =>
  files && Promise.all(files.map(({ blob }) => blob.text()));
const removeAll = async () => {
  for await (const name of (await root()).keys()) {
    await (await root()).removeEntry(name, { recursive: true });
  }
};
beforeEach(removeAll);
afterEach(removeAll);

describe('footage kept for a reload', () => {
  it('comes back from its copy, a sequence in its order', async () => {
    const files = [film('f-10.png', 'ten'), film('f-2.png', 'two')];
    const kept = await copyFootage(root, 'desk', 'one', files, signal);
    const found = await findFootage(root, kept);
    expect(found?.map(({ name }) => name)).toEqual(['f-10.png', 'f-2.png']);
    expect(await textsOf(found)).toEqual(['ten', 'two']);
  });

  it('keeps the last copy of a desk and touches no other desk', async () => {
    const first = await copyFootage(root, 'a', 'one', [film('c.mp4')], signal);
    const second = await copyFootage(root, 'a', 'two', [film('c.mp4', 'later')], signal);
    const other = await copyFootage(root, 'b', 'three', [film('c.mp4', 'other')], signal);
    await dropCopies(root, 'a', 'two');
    await expect(findFootage(root, first)).rejects.toThrow();
    expect(await textsOf(await findFootage(root, second))).toEqual(['later']);
    await dropCopies(root, 'a', null);
    await expect(findFootage(root, second)).rejects.toThrow();
    expect(await textsOf(await findFootage(root, other))).toEqual(['other']);
  });

  it('is not copied where it is large or the disk nearly full', async () => {
    const large = { name: 'l.mp4', blob: { size: COPIED_UP_TO + 1 } as Blob };
    const free = async (bytes: number) => ({ quota: bytes + 7, usage: 7 });
    expect(await isWorthCopying([large], () => free(1e12))).toBe(false);
    expect(await isWorthCopying([film('c.mp4')], () => free(9))).toBe(true);
    expect(await isWorthCopying([film('c.mp4')], () => free(8))).toBe(false);
    expect(await isWorthCopying([film('c.mp4')], async () => ({}))).toBe(false);
  });

  it('stops copying when other footage is opened', async () => {
    const stop = new AbortController();
    stop.abort();
    await expect(copyFootage(root, 'a', 'one', [film('c.mp4')], stop.signal)).rejects.toThrow();
  });

  it('is read from disk again by its handle, where the browser gave one', async () => {
    const handle = await (await root()).getFileHandle('on-disk.mp4', { create: true });
    const stream = await handle.createWritable();
    await stream.write('from disk');
    await stream.close();
    const file = await fileOf(handle);
    const kept = withoutCopy([{ name: file.name, blob: file }], null);
    expect(kept.kind).toBe('handles');
    expect(await textsOf(await findFootage(root, kept))).toEqual(['from disk']);
    // One without a handle leaves the sequence incomplete.
    expect(withoutCopy([{ name: file.name, blob: file }, film('c.png')], null).kind).toBe('none');
    expect(withoutCopy([film('clip.mp4')], 'a-clean')).toEqual({ kind: 'sample', id: 'a-clean' });
  });

  it('is not read without leave', async () => {
    const handle = await (await root()).getFileHandle('asked.mp4', { create: true });
    const asking = new Proxy(handle, {
      get: (target, key) =>
        key === 'queryPermission' ? async () => 'prompt' : Reflect.get(target, key, target),
    });
    expect(await findFootage(root, { kind: 'handles', handles: [asking] })).toBeNull();
  });
});
