import { crc32, deflateSync } from 'node:zlib';
import type { GreyFrame } from '../../src/core/frame';

/** Grey values closer than this to the still scene are its noise. */
const STANDS_OUT = 14;
/** Grey values go in steps of this: finer ones are noise, and cost bytes. */
const STEP = 4;

/** The still scene with the ball of each of the chosen frames in it. */
export function together(film: readonly GreyFrame[], chosen: readonly number[]): Uint8Array {
  const [first] = film;
  if (first === undefined) throw new Error('The film has no frame.');
  const still = Uint8Array.from(first.data, (_, k) => {
    // The ball is in few frames: their middle is the scene.
    const values = film.map(({ data }) => data[k] as number).sort((a, b) => a - b);
    return values[values.length >> 1] as number;
  });
  const out = still.slice();
  for (const frame of chosen) {
    const { data } = film[frame] as GreyFrame;
    for (let k = 0; k < out.length; k++) {
      const [value, scene] = [data[k] as number, still[k] as number];
      if (Math.abs(value - scene) > STANDS_OUT) out[k] = Math.max(value, out[k] as number);
    }
  }
  return out.map((value) => Math.round(value / STEP) * STEP);
}

/** An 8-bit grey PNG (ISO/IEC 15948), each row as its difference from the one above. */
export function greyPng(grey: Uint8Array, width: number): Buffer {
  const height = grey.length / width;
  const rows = Buffer.alloc(height * (width + 1));
  for (let y = 0; y < height; y++) {
    const at = y * (width + 1);
    rows[at] = y === 0 ? 0 : 2;
    for (let x = 0; x < width; x++) {
      const above = y === 0 ? 0 : (grey[(y - 1) * width + x] as number);
      rows[at + 1 + x] = ((grey[y * width + x] as number) - above) & 255;
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header[8] = 8;
  const signature = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]);
  const parts = [
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND'),
  ];
  return Buffer.concat([signature, ...parts]);
}

function chunk(name: string, data: Buffer = Buffer.alloc(0)): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}
