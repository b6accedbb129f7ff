import { afterEach, describe, expect, it, vi } from 'vitest';
import { browserPlatform } from '../../../src/footage/browser';
import { openFootage } from '../../../src/footage/open';
import { spareMemory } from '../../../src/footage/spareMemory';
import { lumaCopier } from '../../../src/footage/webcodecs/luma';
import { filesAt } from './decoding';

describe('luma of a real VideoFrame', () => {
  it('is that of the visible part, sample by sample', async () => {
    const luma = Uint8Array.from({ length: 20 * 12 }, (_, i) => (i * 7) % 256);
    const planes = new Uint8Array(20 * 12 * 1.5).fill(128);
    planes.set(luma);
    const frame = new VideoFrame(planes, {
      format: 'I420',
      codedWidth: 20,
      codedHeight: 12,
      visibleRect: { x: 2, y: 4, width: 10, height: 6 },
      timestamp: 0,
    });
    try {
      const expected = Array.from({ length: 60 }, (_, i) => {
        const [x, y] = [2 + (i % 10), 4 + Math.floor(i / 10)];
        return luma[y * 20 + x];
      });
      const { data, width, height } = await lumaCopier(spareMemory())(frame);
      expect([width, height]).toEqual([10, 6]);
      expect([...data]).toEqual(expected);
    } finally {
      frame.close();
    }
  });
});

describe('decoded frames', () => {
  afterEach(() => vi.unstubAllGlobals());

  it('are all closed, also when reading stops early', async () => {
    const given: VideoFrame[] = [];
    class Watched extends VideoDecoder {
      constructor(init: VideoDecoderInit) {
        super({
          ...init,
          output: (frame) => {
            given.push(frame);
            init.output(frame);
          },
        });
      }
    }
    vi.stubGlobal('VideoDecoder', Watched);
    const files = await filesAt('test/fixtures/footage/uneven.mp4');
    const source = await openFootage(files, browserPlatform);
    for await (const { index } of source.frames({ start: 5, end: 40 })) if (index === 20) break;
    await source.close();
    expect(given.length).toBeGreaterThan(15);
    // A closed frame has no format (WebCodecs, "Close VideoFrame").
    await vi.waitFor(() => expect(given.filter(({ format }) => format !== null)).toEqual([]));
  });
});
