import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { clips } from '../../../sample-clips/render/clips';
import { type Shot, shotSchema } from '../../../src/shot/schema';
import { grey16 } from './png16';

const root = join(import.meta.dirname, '../../../sample-clips');

interface FrameTruth {
  readonly frame: number;
  readonly time: number;
  readonly x: number;
  readonly y: number;
  readonly s: number;
  readonly v: number;
  readonly visible: number;
}
interface Truth {
  readonly about: string;
  readonly exitVelocity: number | null;
  readonly exitTime: number | null;
  readonly sealBurst: number;
  readonly bulgeOnset: number;
  readonly lead: number | null;
  readonly contact: number | null;
  readonly metresPerPixel: number;
  readonly cameraDistance: number;
  readonly axis: readonly [number, number];
  readonly muzzlePoint: readonly [number, number];
  readonly frameRate: number;
  readonly frameTimes: readonly number[] | null;
  readonly lineTime: number;
  readonly exposure: number;
  readonly dragCoefficient: number | null;
  readonly airDensity: number;
  readonly ball: { readonly diameter: number; readonly mass: number };
  readonly muzzleZone: { readonly loss: number; readonly length: number } | null;
  readonly scaleBar: {
    readonly marks: readonly [readonly [number, number], readonly [number, number]];
    readonly length: number;
    readonly depthOffset: number;
  };
  readonly frames: readonly FrameTruth[];
}
interface FrameHashes {
  readonly frameCount: number;
  readonly codedWidth: number;
  readonly codedHeight: number;
  readonly bytesPerPixel: number;
  readonly timestamps: readonly number[] | null;
  readonly hashes: readonly string[];
}

const json = (folder: string, file: string): unknown =>
  JSON.parse(readFileSync(join(root, folder, file), 'utf8'));
const shotOf = (folder: string): Shot => v.parse(shotSchema, json(folder, `${folder}.shot.json`));
const truthOf = (folder: string): Truth => json(folder, 'truth.json') as Truth;
const framesOf = (folder: string): FrameHashes => json(folder, 'frames.json') as FrameHashes;
const filesOf = (shot: Shot): readonly string[] =>
  'paths' in shot.footage ? shot.footage.paths : [shot.footage.path];

describe.each(clips.map((clip) => [clip.folder, clip] as const))('%s', (folder, spec) => {
  const shot = shotOf(folder);
  const truth = truthOf(folder);
  const frames = framesOf(folder);

  it('has a shot file whose hash is that of its footage', () => {
    const hash = createHash('sha256');
    for (const file of filesOf(shot)) hash.update(readFileSync(join(root, folder, file)));
    expect(shot.footage.sha256).toBe(hash.digest('hex'));
    expect(shot.notes).toContain('Rendered');
    expect(truth.about).toContain('Rendered');
  });

  it('lists a hash for every frame, and timestamps as the container holds them', () => {
    expect(frames.frameCount).toBe(spec.frames);
    expect(frames.hashes).toHaveLength(spec.frames);
    expect(frames.hashes.every((hash) => /^[0-9a-f]{16}$/.test(hash))).toBe(true);
    expect(new Set(frames.hashes).size).toBe(spec.frames);
    const turned = spec.image.rotation === 90;
    expect(frames.codedWidth).toBe(turned ? spec.image.height : spec.image.width);
    expect(frames.codedHeight).toBe(turned ? spec.image.width : spec.image.height);
    if (spec.coding.kind === 'png') {
      expect(frames.timestamps).toBeNull();
      return;
    }
    const times = frames.timestamps ?? [];
    expect(times).toHaveLength(spec.frames);
    times.forEach((t, i) => {
      const expected = truth.frameTimes ? (truth.frameTimes[i] as number) : i / 30;
      // WebM holds whole milliseconds.
      expect(Math.abs(t - expected)).toBeLessThan(spec.coding.kind === 'webm' ? 5.1e-4 : 1e-9);
    });
  });

  it('states inputs that differ from the truth, but no more than their uncertainty explains', () => {
    const [length] = shot.scale.lengths;
    const rate = shot.timing.recordingRate;
    const pairs: (readonly [number, number, number])[] = [
      [length?.length ?? 0, truth.scaleBar.length, length?.u ?? 0],
      [length?.depthOffset ?? 0, truth.scaleBar.depthOffset, length?.depthOffsetU ?? 0],
      [shot.ball.diameter.value, truth.ball.diameter, shot.ball.diameter.u],
      [shot.timing.exposure?.value ?? 0, truth.exposure, shot.timing.exposure?.u ?? 0],
      [
        shot.scale.cameraDistance?.value ?? 0,
        truth.cameraDistance,
        shot.scale.cameraDistance?.u ?? 0,
      ],
    ];
    if (rate) pairs.push([rate.value, truth.frameRate, rate.u]);
    if (truth.lineTime > 0) {
      const { lineTime } = shot.timing.readout;
      pairs.push([lineTime.value, truth.lineTime, lineTime.u]);
    }
    for (const [stated, real, u] of pairs) {
      expect(stated).not.toBe(real);
      expect(Math.abs(stated - real)).toBeLessThan(4 * u);
    }
    const ends = [
      [length?.from, truth.scaleBar.marks[0]],
      [length?.to, truth.scaleBar.marks[1]],
    ] as const;
    for (const [stated, real] of ends) {
      expect(Math.hypot((stated?.[0] ?? 0) - real[0], (stated?.[1] ?? 0) - real[1])).toBeLessThan(
        1.5,
      );
    }
    const [mx = 0, my = 0] = shot.muzzle?.point ?? [];
    expect(Math.hypot(mx - truth.muzzlePoint[0], my - truth.muzzlePoint[1])).toBeLessThan(2.5);
  });

  it('shows the bar at the stated length under true perspective', () => {
    const [[x0, y0], [x1, y1]] = truth.scaleBar.marks;
    // Similar triangles: a length farther off by d looks shorter by D / (D + d).
    const shrink = truth.cameraDistance / (truth.cameraDistance + truth.scaleBar.depthOffset);
    const pixels = (truth.scaleBar.length / truth.metresPerPixel) * shrink;
    expect(Math.hypot(x1 - x0, y1 - y0)).toBeCloseTo(pixels, 6);
  });

  it('has times in their order', () => {
    expect(truth.bulgeOnset).toBeLessThan(truth.sealBurst);
    if (truth.exitTime === null || truth.contact === null) return;
    expect(truth.sealBurst).toBeLessThan(truth.contact);
    expect(truth.contact).toBeLessThan(truth.exitTime);
    expect(truth.lead).toBeCloseTo(truth.exitTime - truth.sealBurst, 12);
    const leadInFrames = (truth.lead ?? 0) * truth.frameRate;
    expect(Math.abs(leadInFrames - Math.round(leadInFrames))).toBeGreaterThan(0.01);
  });

  it('has positions from which its exit velocity and time follow, or no ball at all', () => {
    if (!spec.shot) {
      expect([truth.exitVelocity, truth.exitTime, truth.frames]).toEqual([null, null, []]);
      return;
    }
    const { seen, drag } = flown(truth);
    expect(seen.length).toBeGreaterThan(9);
    const v0 = truth.exitVelocity ?? 0;
    const zone = truth.muzzleZone;
    // The slow ball also gains or loses a little speed by gravity along a tilted axis.
    const tolerance = zone ? 1e-3 : v0 < 20 ? 5e-4 : 2e-4;
    for (let k = 0; k + 1 < seen.length; k++) {
      const [a, b] = [seen[k], seen[k + 1]] as [FrameTruth, FrameTruth];
      const mean = (along(truth, b) - along(truth, a)) / (b.time - a.time);
      const s = (along(truth, a) + along(truth, b)) / 2;
      // dv/ds = -k v gives v0 exp(-k s); with the zone's loss, to first order, taken off.
      const lost = zone ? zone.loss * (1 - Math.exp(-s / zone.length)) : 0;
      const atMuzzle = mean / (Math.exp(-drag * s) - lost);
      expect(Math.abs(atMuzzle / v0 - 1)).toBeLessThan(tolerance);
    }
    const [first] = seen;
    const s = first ? along(truth, first) : 0;
    const delay = (Math.exp(drag * s) - 1) / (drag * v0);
    const error = (first?.time ?? 0) - delay - (truth.exitTime ?? 0);
    expect(Math.abs(error) * v0).toBeLessThan(zone ? 1e-3 : 2e-5);
  });
});

/** Frames with the ball past the muzzle and all in view, and the deceleration per speed squared. */
function flown(truth: Truth): { seen: readonly FrameTruth[]; drag: number } {
  const { diameter, mass } = truth.ball;
  const area = (Math.PI / 4) * diameter ** 2;
  return {
    seen: truth.frames.filter((f) => f.visible > 0.9 && f.s > 0),
    drag: ((truth.dragCoefficient ?? 0) * truth.airDensity * area) / (2 * mass),
  };
}

/** Distance along the axis from the muzzle, m, from the image place alone. */
function along(truth: Truth, f: FrameTruth): number {
  const dx = f.x - truth.muzzlePoint[0];
  const dy = f.y - truth.muzzlePoint[1];
  return truth.metresPerPixel * (dx * truth.axis[0] + dy * truth.axis[1]);
}

it('keeps all sample files together under 12 MiB', () => {
  const size = (folder: string): number =>
    readdirSync(folder, { withFileTypes: true })
      .map((e) => join(folder, e.name))
      .reduce(
        (sum, path) => sum + (statSync(path).isDirectory() ? size(path) : statSync(path).size),
        0,
      );
  expect(size(root)).toBeLessThan(12 * 2 ** 20);
});

describe('b-phone', () => {
  it('is turned a quarter clockwise by its track header', () => {
    const file = readFileSync(join(root, 'b-phone', 'clip.mp4'));
    // ISO/IEC 14496-12, track header: the matrix is 40 bytes after the version field.
    const matrix = file.indexOf('tkhd') + 4 + 40;
    const rows = Array.from({ length: 5 }, (_, k) => file.readInt32BE(matrix + 4 * k));
    expect(rows).toEqual([0, 65_536, 0, -65_536, 0]);
  });

  it('has uneven frames and several per cent of rolling-shutter error in an uncorrected speed', () => {
    const truth = truthOf('b-phone');
    const times = truth.frameTimes ?? [];
    const intervals = times.slice(1).map((t, i) => t - (times[i] as number));
    expect(Math.max(...intervals) - Math.min(...intervals)).toBeGreaterThan(0.001);
    const { seen } = flown(truth);
    const [first] = seen;
    const last = seen[seen.length - 1];
    if (!first || !last) throw new Error('no flight');
    const way = along(truth, last) - along(truth, first);
    const wrong = way / ((times[last.frame] as number) - (times[first.frame] as number));
    const right = way / (last.time - first.time);
    expect(Math.abs(wrong / right - 1)).toBeGreaterThan(0.05);
  });
});

describe('e-sequence', () => {
  const { width, height, ...first } = grey16(
    readFileSync(join(root, 'e-sequence', 'frame-0000.png')),
  );
  const frames = framesOf('e-sequence');
  const read = (i: number): Uint16Array => {
    const name = `frame-${String(i).padStart(4, '0')}.png`;
    return grey16(readFileSync(join(root, 'e-sequence', name))).data;
  };

  it('decodes, by the PNG specification, to the listed hashes', () => {
    expect([width, height]).toEqual([frames.codedWidth, frames.codedHeight]);
    expect(first.data.every((value) => value % 16 === 0)).toBe(true);
    for (let i = 0; i < frames.frameCount; i++) {
      const bytes = Buffer.alloc(2 * width * height);
      read(i).forEach((value, k) => {
        bytes.writeUInt16LE(value, 2 * k);
      });
      const hash = createHash('sha256').update(bytes).digest('hex').slice(0, 16);
      expect(hash).toBe(frames.hashes[i]);
    }
  });

  it('shows the ball where the truth says', () => {
    const truth = truthOf('e-sequence');
    const radius = truth.ball.diameter / 2 / truth.metresPerPixel;
    const still = first.data;
    let checked = 0;
    for (const f of flown(truth).seen.filter((g) => g.visible > 0.999)) {
      const image = read(f.frame);
      // Columns brighter than the still wall, over a band about the centre line.
      let changed = 0;
      let moment = 0;
      for (let y = Math.round(f.y) - 4; y <= Math.round(f.y) + 4; y++) {
        for (let x = Math.ceil(f.x - radius - 6); x <= f.x + radius + 6; x++) {
          const k = y * width + x;
          if ((image[k] as number) - (still[k] as number) < 2500) continue;
          changed++;
          moment += x;
        }
      }
      // Chord of the band, a little widened by blur: the share of a pixel an edge can be off by.
      expect(Math.abs(changed / 9 - 2 * radius)).toBeLessThan(2.5);
      expect(Math.abs(moment / changed - f.x)).toBeLessThan(1.2);
      checked++;
    }
    expect(checked).toBeGreaterThan(5);
  });
});
