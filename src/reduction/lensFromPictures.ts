import type { FootageInfo, FrameRange } from '../core/film';
import type { GreyFrame } from '../core/frame';
import type { BoardSize } from '../image/chessboard/findBoard';
import type { Vision } from '../image/opencv/vision';
import { type Shrunk, shrink } from '../image/shrink';
import { type BoardCalibration, calibrateLensFromBoards } from './calibrateLens';

/** A calibration with a small copy of every picture that was looked at, in their order. */
export interface PicturedCalibration extends BoardCalibration {
  readonly pictures: readonly Shrunk[];
}

/** The part of a `FrameSource` that is needed. */
export interface BoardFootage {
  readonly info: Pick<FootageInfo, 'frameCount'>;
  frames(range: FrameRange): AsyncIterable<GreyFrame>;
}

/** Tens of pictures do; each takes a third of a second and more. */
const MOST_PICTURES = 30;
/** Longer side of a copy, px. */
const COPY = 480;

/** The lens from a clip or stills of a chessboard, pictures taken evenly from it. `onShare` gets 0..1. */
export async function lensFromPictures(
  footage: BoardFootage,
  size: BoardSize | null,
  vision: Pick<Vision, 'fitCamera'>,
  onShare: (share: number) => void,
): Promise<PicturedCalibration> {
  const end = footage.info.frameCount;
  const step = Math.max(1, Math.ceil(end / MOST_PICTURES));
  const pictures: Shrunk[] = [];
  async function* watched(): AsyncGenerator<GreyFrame> {
    for await (const frame of footage.frames({ start: 0, end, step })) {
      pictures.push(shrink(frame, COPY));
      yield frame;
      onShare((pictures.length * step) / (end + step));
    }
  }
  const calibration = await calibrateLensFromBoards(watched(), size, vision);
  return { ...calibration, pictures };
}
