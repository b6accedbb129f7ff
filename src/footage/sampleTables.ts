import { type headersOf, lettersAt } from './bytes';
import { brokenIndex } from './damaged';

type Read = ReturnType<typeof headersOf>;

/** Index, track and what leads to a track's tables. */
const HOLD_OTHERS = ['trak', 'mdia', 'minf', 'stbl'];
/** Of a box, and of one with a version and flags. */
const HEAD = 8;
const FULL_HEAD = 12;

interface Tables {
  isFilm: boolean;
  /** Frames that have a time, and that have a size. */
  timed: number;
  sized: number;
}

/**
 * Checks that the tables of each film track in an index speak of as many frames (ISO/IEC 14496-12,
 * 8.6.1.2 and 8.7.3; from memory). Readers take the shorter one, and the film ends early. Throws `brokenIndex`.
 */
export async function requireEqualTables(
  name: string,
  read: Read,
  start: number,
  end: number,
): Promise<void> {
  const tracks: Tables[] = [];
  await gather(read, start, end, tracks);
  for (const { isFilm, timed, sized } of tracks) {
    if (isFilm && timed !== sized) throw brokenIndex(name, timed, sized);
  }
}

async function gather(read: Read, start: number, end: number, tracks: Tables[]): Promise<void> {
  for (let at = start; at + HEAD <= end; ) {
    const box = await read(at, 24);
    if (box.byteLength < HEAD) return;
    const type = lettersAt(box, 4);
    const next = at + box.getUint32(0);
    if (next < at + HEAD || next > end) return; // not for us to judge: the readers will
    if (type === 'trak') tracks.push({ isFilm: false, timed: 0, sized: 0 });
    const track = tracks.at(-1);
    if (HOLD_OTHERS.includes(type)) await gather(read, at + HEAD, next, tracks);
    else if (track !== undefined && next >= at + 20) {
      if (type === 'hdlr') track.isFilm ||= lettersAt(box, 16) === 'vide';
      if (type === 'stsz' || type === 'stz2') track.sized = box.getUint32(16);
      if (type === 'stts') track.timed = await timedIn(read, at + FULL_HEAD, next);
    }
    at = next;
  }
}

/** Entries say of so many frames that they last so long. */
async function timedIn(read: Read, at: number, end: number): Promise<number> {
  const stated = (await read(at, 4)).getUint32(0);
  const entries = Math.min(stated, Math.floor((end - at - 4) / 8));
  let frames = 0;
  for (let i = 0; i < entries; i++) frames += (await read(at + 4 + 8 * i, 4)).getUint32(0);
  return frames;
}
