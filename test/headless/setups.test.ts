import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Result } from '../../src/shot/result';
import type { ShotInput } from '../../src/shot/schema';
import { generator } from '../unit/image/rendering';
import { drawTexture, texture } from '../unit/image/texture';
import { reduce } from './command';

const WIDTH = 320;
const HEIGHT = 160;
const FRAMES = 6;
const scene = texture(WIDTH, HEIGHT, 300, 1.5, 31);

/** An 8-bit grey PNG (PNG specification, clauses 5 and 11). */
function png(image: Float64Array, noise: () => number): Buffer {
  const rows = Buffer.alloc((WIDTH + 1) * HEIGHT);
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++) {
      const grey = Math.round((image[y * WIDTH + x] as number) + 1.5 * noise());
      rows[y * (WIDTH + 1) + 1 + x] = Math.min(255, Math.max(0, grey));
    }
  }
  const chunk = (kind: string, body: Buffer): Buffer => {
    const named = Buffer.concat([Buffer.from(kind, 'latin1'), body]);
    const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(body.length);
    check.writeUInt32BE(crc32(named));
    return Buffer.concat([length, named, check]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(WIDTH, 0);
  header.writeUInt32BE(HEIGHT, 4);
  header.writeUInt8(8, 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'setups-'));
});
afterAll(() => rm(folder, { recursive: true }));

/** A shot without a ball, its camera moved sideways by so many pixels since the setup was made. */
async function shot(name: string, moved: number, change: Partial<ShotInput> = {}): Promise<string> {
  const { normal } = generator(name.length + 100 * moved);
  const image = drawTexture(scene, moved, 0);
  const paths = Array.from({ length: FRAMES }, (_, i) => `${name}-${i}.png`);
  await Promise.all(paths.map((path) => writeFile(join(folder, path), png(image, normal))));
  const file = join(folder, `${name}.shot.json`);
  const stated: ShotInput = {
    format: 'exitframe-shot',
    version: 5,
    name,
    footage: { paths, sha256: null },
    timing: { source: 'recordingRate', recordingRate: { value: 12_000, u: 0.6 } },
    scale: { lengths: [{ from: [20, 140], to: [220, 140], length: 0.2, u: 5e-5 }] },
    muzzle: { point: [60, 80], u: 0.5, axis: [1, 0] },
    seals: null,
    setupId: 'bench',
    ...change,
  };
  await writeFile(file, JSON.stringify(stated));
  return file;
}

describe('shots of one setup in one command', () => {
  it('are set against the first one of it, and only against it', async () => {
    const anew: Partial<ShotInput> = { muzzle: { point: [63, 80], u: 0.5, axis: [1, 0] } };
    const files = await Promise.all([
      shot('first', 0),
      shot('as before', 0.1),
      shot('moved', 3),
      shot('elsewhere', 3, { setupId: 'window' }),
      shot('of no setup', 3, { setupId: null }),
      shot('marked anew', 3, anew),
    ]);
    const output = await reduce(...files);
    const results = output.stdout
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Result);
    const moved = results.map(
      ({ warnings }) => warnings.find(({ code }) => code === 'cameraMoved')?.message ?? null,
    );
    expect(moved).toEqual([null, null, expect.stringContaining('3.0 px'), null, null, null]);
    expect(moved[2]).toContain('shot first');
  }, 60_000);
});
