import { ExitframeError } from '../core/reason';
import { planeSum } from './planeSum';

/** A film's frames as another decoder reads them. */
export interface SecondReading {
  /** Of the whole film. */
  readonly frameCount: number;
  /** By index, of the frames asked for. */
  readonly sums: ReadonlyMap<number, number>;
}

/** What the frames of a film summed to as they were given out, to be held against another decoder's. */
export class GivenFrames {
  private readonly frameCount: number;
  private readonly sums = new Map<number, number>();

  constructor(frameCount: number) {
    this.frameCount = frameCount;
  }

  /** Throws `decoderFailed` where the frame was another one when it was last given out. */
  note(index: number, data: Uint8Array | Uint16Array): void {
    const sum = planeSum(data);
    if ((this.sums.get(index) ?? sum) !== sum) throw differs(index);
    this.sums.set(index, sum);
  }

  /** Throws `decoderFailed` where the other decoder finds another number of frames, or reads one otherwise. */
  holdAgainst({ frameCount, sums }: SecondReading): void {
    if (frameCount !== this.frameCount) throw otherCount(this.frameCount, frameCount);
    for (const [index, sum] of sums) {
      if ((this.sums.get(index) ?? sum) !== sum) throw differs(index);
    }
  }
}

const differs = (frame: number) =>
  new ExitframeError(
    'decoderFailed',
    `Frame ${frame} is another picture for a second decoder: the film is damaged before or at it.`,
    'Copy the clip from the camera again, or leave that part out.',
    { values: { form: 'differs', frame } },
  );

const otherCount = (frames: number, others: number) =>
  new ExitframeError(
    'decoderFailed',
    `The browser finds ${frames} frames in the film and ffmpeg ${others}: its list of frames is damaged, or no list that both understand.`,
    'Copy the clip from the camera again; if that does not help, convert it.',
    { values: { form: 'counts', frames, others } },
  );
