import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { spareMemory } from '../../../src/footage/spareMemory';
import { LumaDecoder } from '../../../src/footage/webcodecs/decoder';
import { lumaCopier } from '../../../src/footage/webcodecs/luma';

/** A frame as a browser's decoder gives it: planes with rows longer than the picture. */
function frameOf(
  format: string | null,
  samples: Uint8Array | Uint16Array,
  stride: number,
  fullRange: boolean | null = null,
) {
  const bytes = new Uint8Array(samples.buffer);
  return {
    format,
    colorSpace: { fullRange },
    visibleRect: { x: 0, y: 0, width: 3, height: 2 },
    allocationSize: () => bytes.length,
    copyTo: async (to: ArrayBuffer) => {
      new Uint8Array(to).set(bytes);
      return [{ offset: 0, stride }];
    },
  } as unknown as VideoFrame;
}

describe('luma plane', () => {
  it('is taken without what lies between its rows', async () => {
    const samples = Uint8Array.of(1, 2, 3, 99, 99, 4, 5, 6, 99, 99, 77, 77);
    expect(await lumaCopier(spareMemory())(frameOf('I420', samples, 5))).toEqual({
      data: Uint8Array.of(1, 2, 3, 4, 5, 6),
      width: 3,
      height: 2,
      bitDepth: 8,
      isLimited: false,
    });
    expect((await lumaCopier(spareMemory())(frameOf('NV12', samples, 5))).bitDepth).toBe(8);
  });

  it('keeps 10 and 12 bits', async () => {
    const samples = Uint16Array.of(1000, 2, 3, 99, 4, 5, 1023, 99, 77, 77);
    const data = Uint16Array.of(1000, 2, 3, 4, 5, 1023);
    expect(await lumaCopier(spareMemory())(frameOf('I420P10', samples, 8))).toMatchObject({
      data,
      bitDepth: 10,
    });
    expect(await lumaCopier(spareMemory())(frameOf('I444P12', samples, 8))).toMatchObject({
      data,
      bitDepth: 12,
    });
  });

  it.each([
    [true, false],
    [false, true],
    [null, false],
  ])('is of full range (%s): limited is %s', async (fullRange, isLimited) => {
    const luma = await lumaCopier(spareMemory())(frameOf('I420', new Uint8Array(12), 5, fullRange));
    expect(luma.isLimited).toBe(isLimited);
  });

  it.each(['RGBA', 'BGRX', null])('is not made from %s', async (format) => {
    await expect(
      lumaCopier(spareMemory())(frameOf(format, new Uint8Array(24), 12)),
    ).rejects.toMatchObject({
      code: 'undecodable',
    });
  });
});

/** Takes packets and does with them what `behaviour` says. */
class FakeDecoder extends EventTarget {
  static behaviour: (decoder: FakeDecoder) => void = () => {};
  decodeQueueSize = 0;
  state = 'configured';
  constructor(readonly init: VideoDecoderInit) {
    super();
  }
  configure(): void {}
  decode(): void {
    FakeDecoder.behaviour(this);
  }
  flush(): Promise<void> {
    return new Promise(() => {});
  }
  close(): void {
    this.state = 'closed';
  }
}

describe('a decoder that does not do its work', () => {
  beforeEach(() => {
    vi.useFakeTimers();
    vi.stubGlobal('VideoDecoder', FakeDecoder);
    vi.stubGlobal('EncodedVideoChunk', class {});
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  it('is given up when it gives nothing', async () => {
    FakeDecoder.behaviour = () => {};
    const decoder = new LumaDecoder({ codec: 'avc1' }, spareMemory());
    await decoder.begin([0]);
    decoder.feed(new Uint8Array(1), 'key', 0);
    const waiting = expect(decoder.progress()).rejects.toMatchObject({
      code: 'decoderFailed',
      message: expect.stringContaining('no frame'),
    });
    await vi.advanceTimersByTimeAsync(60_000);
    await waiting;
  });

  it('has its own words passed on when it stops', async () => {
    FakeDecoder.behaviour = ({ init }) =>
      init.error(new DOMException('bad slice', 'EncodingError'));
    const decoder = new LumaDecoder({ codec: 'avc1' }, spareMemory());
    await decoder.begin([0]);
    decoder.feed(new Uint8Array(1), 'key', 0);
    await expect(decoder.take(0)).rejects.toMatchObject({
      code: 'decoderFailed',
      message: expect.stringContaining('bad slice'),
    });
  });

  it('is not waited for when it leaves a frame out', async () => {
    const frame = Object.assign(frameOf('I420', new Uint8Array(24), 3), {
      timestamp: 1000,
      close: vi.fn(),
    });
    FakeDecoder.behaviour = ({ init }) => init.output(frame);
    const decoder = new LumaDecoder({ codec: 'avc1' }, spareMemory());
    await decoder.begin([0, 1]);
    decoder.feed(new Uint8Array(1), 'key', 0);
    await expect(decoder.take(0)).rejects.toMatchObject({ code: 'truncated' });
    await vi.waitFor(() => expect(frame.close).toHaveBeenCalledOnce());
  });
});
