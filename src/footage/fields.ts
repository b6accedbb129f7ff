import type { FieldOrder, FootageInfo, FrameRange, Reading } from '../core/film';
import type { FilmedLines, GreyFrame } from '../core/frame';
import { indicesOf } from './range';
import { type Rotation, turnUpright } from './rotate';
import type { FrameSource } from './source';

/**
 * A film as it is to be read: whole, or with the fields of each frame as frames of their own, the
 * one exposed first before the other.
 *
 * A field keeps its lines where they were in the frame, so that a place means the same in both
 * fields; each line between is the mean of the two beside it. The second field's time lies half
 * way to the next frame.
 */
export function inFields(source: FrameSource, choice: Reading['fields']): FrameSource {
  const { info, check } = source;
  const order = choice === 'auto' ? info.interlaced.stated : choice === 'whole' ? null : choice;
  if (order === null) return source;
  return {
    info: {
      ...info,
      frameCount: 2 * info.frameCount,
      playbackRate: info.playbackRate === null ? null : 2 * info.playbackRate,
      interlaced: { ...info.interlaced, separated: order },
    },
    async timestamps(signal) {
      const times = await source.timestamps(signal);
      return times && timesOfFields(times);
    },
    frames: (range, signal) => fieldsOf(source, order, range, signal),
    ...(check && { check: (ranges, signal) => check(ranges.map(framesBehind), signal) }),
    audio: (signal) => source.audio(signal),
    close: () => source.close(),
  };
}

function timesOfFields(times: Float64Array): Float64Array {
  const last = times.length - 1;
  return Float64Array.from({ length: 2 * times.length }, (_, i) => {
    const k = i >> 1;
    const at = times[k] as number;
    // Nothing follows the last frame: it is taken to last as long as the one before.
    const lasts =
      k < last ? (times[k + 1] as number) - at : at - (times[Math.max(last - 1, 0)] as number);
    return i % 2 === 0 ? at : at + lasts / 2;
  });
}

async function* fieldsOf(
  source: FrameSource,
  order: FieldOrder,
  range: FrameRange,
  signal?: AbortSignal,
): AsyncGenerator<GreyFrame> {
  const wanted = new Set(indicesOf(range, 2 * source.info.frameCount));
  if (wanted.size === 0) return;
  for await (const frame of source.frames(framesBehind(range), signal)) {
    for (const second of [0, 1]) {
      const index = 2 * frame.index + second;
      if (!wanted.has(index)) continue;
      const firstLine = (order === 'topFirst') === (second === 0) ? 0 : 1;
      const data = fieldOf(frame, source.info, firstLine);
      yield { ...frame, index, data, filmed: filmedLines(frame, source.info, firstLine) };
    }
  }
}

/** The frames whose fields a range asks for. */
const framesBehind = ({ start, end, step = 1 }: FrameRange): FrameRange => ({
  start: start >> 1,
  end: (end + 1) >> 1,
  step: step % 2 === 0 ? step / 2 : 1,
});

/** Which lines of the upright picture a field's lines as coded are; some turns count them from the other end. */
function filmedLines(
  { width, height }: GreyFrame,
  { rotation }: FootageInfo,
  firstLine: number,
): FilmedLines {
  const lines = rotation === 90 || rotation === 270 ? 'columns' : 'rows';
  const last = (lines === 'rows' ? height : width) - 1;
  const fromEnd = rotation === 90 || rotation === 180;
  return { lines, first: ((fromEnd ? last - firstLine : firstLine) % 2) as 0 | 1 };
}

/** The lines of one field in their places, those between filled in; lines are rows as coded. */
function fieldOf(
  { data, width, height }: GreyFrame,
  { rotation }: FootageInfo,
  firstLine: number,
): GreyFrame['data'] {
  const back = ((360 - rotation) % 360) as Rotation;
  const sideways = rotation === 90 || rotation === 270;
  const [across, lines] = sideways ? [height, width] : [width, height];
  const coded = turnUpright(data, width, height, back);
  const field = coded.slice();
  for (let line = 1 - firstLine; line < lines; line += 2) {
    const above = line > 0 ? line - 1 : line + 1;
    const below = line + 1 < lines ? line + 1 : line - 1;
    for (let x = 0; x < across; x++) {
      const sum = (coded[above * across + x] as number) + (coded[below * across + x] as number);
      field[line * across + x] = (sum + 1) >> 1;
    }
  }
  return turnUpright(field, across, lines, rotation);
}
