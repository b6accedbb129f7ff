import type { Cancellation } from '../core/cancellation';
import type { FootageInfo } from '../core/film';
import type { GreyFrame } from '../core/frame';
import type { ImagePoint, ImageVector, Pixels } from '../core/units';
import { type CompositeDisc, createComposite } from '../image/composite';
import { streakLineFor, streakReader } from '../image/streak';
import type { Background, StreakLine } from '../image/types';
import { smallPictures } from './smallPictures';
import type { FrameSupply } from './work';

/** What a look through a film that is not measured yet is to give. */
export interface LookQuestion {
  readonly info: FootageInfo;
  /** Where the streak image is read: through a point, along a direction, in a band of so many pixels. */
  readonly streak: {
    readonly origin: ImagePoint;
    readonly axis: ImageVector;
    readonly halfWidth: Pixels;
  };
}

/** Told as it comes. */
export interface LookPart {
  /** The line the rows lie along. */
  readonly line: StreakLine;
  readonly rows: readonly { readonly frame: number; readonly row: Float32Array }[];
  /** Small pictures; `index` is the film's. */
  readonly small: readonly GreyFrame[];
  readonly share: number;
}

/** Frames whose findings are told at once. */
const TOLD_AT_ONCE = 16;

/** One pass over a film before it is measured: its streak image along an assumed line, and small pictures. */
export async function lookThrough(
  { info, streak }: LookQuestion,
  film: FrameSupply,
  onPart: (part: LookPart) => void,
  cancellation: Cancellation,
): Promise<void> {
  const { origin, axis, halfWidth } = streak;
  const line = streakLineFor(info.width, info.height, origin, axis, halfWidth);
  const readStreak = streakReader(info.width, info.height, line);
  const smallOf = smallPictures(info.frameCount);
  let rows: { frame: number; row: Float32Array }[] = [];
  let pictures: GreyFrame[] = [];
  let done = 0;
  const tell = () => {
    if (rows.length === 0) return;
    onPart({ line, rows, small: pictures, share: done / info.frameCount });
    [rows, pictures] = [[], []];
  };
  for await (const frame of film.frames({ start: 0, end: info.frameCount })) {
    cancellation.throwIfAborted();
    rows.push({ frame: frame.index, row: readStreak(frame) });
    const picture = smallOf(frame);
    if (picture !== null) pictures.push(picture);
    film.done?.(frame);
    done += 1;
    if (rows.length >= TOLD_AT_ONCE) tell();
  }
  tell();
}

/** Frames of which what moves is to be put into one picture. */
export interface FlightQuestion {
  readonly scene: Background;
  /** In the order of the film; `disc` null: whatever moves anywhere. */
  readonly frames: readonly { readonly frame: number; readonly disc: CompositeDisc | null }[];
}

/** The whole flight in one picture. */
export async function composeFlight(
  { scene, frames }: FlightQuestion,
  film: FrameSupply,
  onShare: (share: number) => void,
  cancellation: Cancellation,
): Promise<GreyFrame> {
  const composite = createComposite(scene);
  const discs = new Map(frames.map(({ frame, disc }) => [frame, disc]));
  const [first, last] = [frames[0]?.frame, frames.at(-1)?.frame];
  if (first === undefined || last === undefined) return composite.picture();
  for await (const frame of film.frames({ start: first, end: last + 1 })) {
    cancellation.throwIfAborted();
    const disc = discs.get(frame.index);
    if (disc !== undefined) composite.add(frame, disc);
    film.done?.(frame);
    onShare((frame.index - first + 1) / (last - first + 1));
  }
  return composite.picture();
}
