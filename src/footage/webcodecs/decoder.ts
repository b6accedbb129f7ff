import { ExitframeError, reasonOf } from '../../core/reason';
import type { SpareMemory } from '../spareMemory';
import { type Luma, lumaCopier } from './luma';

/**
 * Packets in the decoder and frames waiting to be fetched, at most so many each. A decoder works
 * faster than frames are measured; a few keep it busy, more would only fill memory.
 */
const AHEAD = 8;
/** Without a sign of life for so long the decoder counts as stalled, ms. */
const STALLED_AFTER = 20_000;
/**
 * Frames are told apart by their display index, given to the decoder as the timestamp. The
 * container's own times need not be whole microseconds, which is all a decoder can carry.
 */
const MICROSECONDS_AN_INDEX = 1000;

/** A `VideoDecoder` whose frames are fetched by index, in display order. */
export class LumaDecoder {
  private readonly decoder: VideoDecoder;
  private readonly copyLuma: ReturnType<typeof lumaCopier>;
  private readonly arrived = new Map<number, Promise<Luma>>();
  private wanted: ReadonlySet<number> = new Set();
  private failure: ExitframeError | null = null;
  private flushing: Promise<void> | null = null;
  private flushed = false;
  /** Something happened since `progress` was last waited for. */
  private stirred = false;
  private resume: () => void = () => {};

  /** `memory`: for the frames. */
  constructor(config: VideoDecoderConfig, memory: SpareMemory) {
    this.copyLuma = lumaCopier(memory);
    this.decoder = new VideoDecoder({
      output: (frame) => this.receive(frame),
      error: (error) => this.fail(error),
    });
    this.decoder.addEventListener('dequeue', () => this.wake());
    this.decoder.configure(config);
  }

  /** Begins a run of packets, the first one a key packet; only frames wanted are kept. */
  async begin(wanted: Iterable<number>): Promise<void> {
    await this.flushing;
    this.flushing = null;
    this.flushed = false;
    this.arrived.clear();
    this.wanted = new Set(wanted);
  }

  get hasRoom(): boolean {
    return this.decoder.decodeQueueSize < AHEAD && this.arrived.size < AHEAD;
  }

  feed(data: Uint8Array, type: EncodedVideoChunkType, index: number): void {
    this.check();
    const timestamp = index * MICROSECONDS_AN_INDEX;
    try {
      this.decoder.decode(new EncodedVideoChunk({ type, timestamp, data }));
    } catch (error) {
      this.fail(error);
    }
  }

  /** Has the decoder give out what it still holds. */
  finish(): void {
    this.check();
    this.flushing = this.decoder.flush().then(
      () => {
        this.flushed = true;
        this.wake();
      },
      (error) => this.fail(error),
    );
  }

  /** The frame, if it has come; throws where it cannot come any more. */
  async take(index: number): Promise<Luma | null> {
    this.check();
    const luma = this.arrived.get(index);
    if (luma !== undefined) {
      this.arrived.delete(index);
      return luma;
    }
    if (this.arrived.size > 0 || this.flushed) {
      throw new ExitframeError(
        'truncated',
        `The film lists frame ${index}, but the decoder gives none there.`,
        'Copy the clip from the camera again, or leave that part out.',
        { values: { form: 'noFrame', frame: index } },
      );
    }
    return null;
  }

  /** Waits until something happens in the decoder; not at all where it has since the last time. */
  async progress(): Promise<void> {
    let timer: ReturnType<typeof setTimeout> | undefined;
    try {
      if (!this.stirred) {
        await new Promise<void>((resolve, reject) => {
          this.resume = resolve;
          timer = setTimeout(() => reject(stalled()), STALLED_AFTER);
        });
      }
    } finally {
      clearTimeout(timer);
      this.stirred = false;
    }
    this.check();
  }

  close(): void {
    if (this.decoder.state !== 'closed') this.decoder.close();
  }

  private receive(frame: VideoFrame): void {
    const index = frame.timestamp / MICROSECONDS_AN_INDEX;
    if (this.wanted.has(index)) {
      const luma = this.copyLuma(frame).finally(() => frame.close());
      luma.catch(() => {}); // told to whoever takes it; nobody may
      this.arrived.set(index, luma);
    } else {
      frame.close();
    }
    this.wake();
  }

  private wake(): void {
    this.stirred = true;
    this.resume();
  }

  private fail(error: unknown): void {
    this.failure ??= new ExitframeError(
      'decoderFailed',
      `The browser's decoder gave up: ${reasonOf(error).message}.`,
      'The clip may be damaged there: copy it from the camera again, or leave that part out.',
      { cause: error, values: { form: 'browser', why: reasonOf(error).message } },
    );
    this.wake();
  }

  private check(): void {
    if (this.failure !== null) throw this.failure;
  }
}

const stalled = () =>
  new ExitframeError(
    'decoderFailed',
    `The browser's decoder has given no frame for ${STALLED_AFTER / 1000} s.`,
    'Reload the page; if it happens again, convert the clip.',
    { values: { form: 'browserStalled', seconds: `${STALLED_AFTER / 1000}` } },
  );
