import { inflateSync } from 'node:zlib';

/** Samples of a 16-bit grey PNG without interlace, little-endian bytes (PNG specification, clauses 4, 7, 9). */
export function grey16(png: Buffer): { width: number; height: number; data: Uint16Array } {
  let width = 0;
  let height = 0;
  const packed: Buffer[] = [];
  for (let at = 8; at < png.length; ) {
    const length = png.readUInt32BE(at);
    const kind = png.toString('latin1', at + 4, at + 8);
    const body = png.subarray(at + 8, at + 8 + length);
    if (kind === 'IHDR') {
      width = body.readUInt32BE(0);
      height = body.readUInt32BE(4);
      if (body[8] !== 16 || body[9] !== 0 || body[12] !== 0) throw new Error('not 16-bit grey');
    }
    if (kind === 'IDAT') packed.push(body);
    at += length + 12;
  }
  const raw = inflateSync(Buffer.concat(packed));
  const stride = 2 * width;
  const bytes = new Uint8Array(stride * height);
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (stride + 1)] as number;
    for (let k = 0; k < stride; k++) {
      const left = k >= 2 ? (bytes[y * stride + k - 2] as number) : 0;
      const up = y > 0 ? (bytes[(y - 1) * stride + k] as number) : 0;
      const corner = k >= 2 && y > 0 ? (bytes[(y - 1) * stride + k - 2] as number) : 0;
      const guess = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][filter] as number;
      bytes[y * stride + k] = (raw[y * (stride + 1) + 1 + k] as number) + guess;
    }
  }
  const data = new Uint16Array(width * height);
  for (let k = 0; k < data.length; k++) {
    data[k] = 256 * (bytes[2 * k] as number) + (bytes[2 * k + 1] as number);
  }
  return { width, height, data };
}

function paeth(a: number, b: number, c: number): number {
  const p = a + b - c;
  const [da, db, dc] = [Math.abs(p - a), Math.abs(p - b), Math.abs(p - c)];
  if (da <= db && da <= dc) return a;
  return db <= dc ? b : c;
}
