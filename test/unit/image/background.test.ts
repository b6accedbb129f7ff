import { describe, expect, test } from 'vitest';
import type { GreyFrame } from '../../../src/core/frame';
import { buildBackground } from '../../../src/image/background';
import { frameGain } from '../../../src/image/gain';
import { expose, generator, render } from './rendering';

const WIDTH = 96;
const HEIGHT = 48;
const scene = (x: number, y: number) => 40 + 0.8 * x + 10 * Math.sin(y / 7);

const still = (centre: readonly [number, number], radius: number) =>
  render({ width: WIDTH, height: HEIGHT, centre, radius, background: scene });

describe('background', () => {
  test('a ball that passes leaves no ghost, and levels are finer than a grey step', () => {
    const random = generator(1);
    const frames = Array.from({ length: 40 }, (_, i) =>
      // The ball comes in after frame 20 and stays two frames over each pixel or so.
      expose(still(i < 20 ? [-50, 24] : [(i - 20) * 8 - 20, 24], 9), WIDTH, HEIGHT, 1.5, random, i),
    );
    const built = buildBackground(frames);
    if (!built.ok) throw new Error(built.reason.message);
    const empty = still([-50, 24], 9);
    let worst = 0;
    let squares = 0;
    for (let p = 0; p < empty.length; p++) {
      const off = (built.value.level[p] as number) - (empty[p] as number);
      worst = Math.max(worst, Math.abs(off));
      squares += off * off;
    }
    // A mean of 40 values with sigma 1.5 scatters by 0.24; the ball stands 100 grey values out.
    expect(worst).toBeLessThan(1.8);
    expect(Math.sqrt(squares / empty.length)).toBeLessThan(0.33);
  });

  test('nor does one hardly brighter than the noise', () => {
    const noise = 8;
    const random = generator(3);
    const drawn = (i: number) =>
      render({
        ...{ width: WIDTH, height: HEIGHT, radius: 12, background: scene },
        centre: i < 20 ? [-50, 24] : [(i - 20) * 6 - 12, 24],
        // As the dim side of a ball: its picture stands out by one and a half deviations of the noise.
        shade: (u) => scene(0, 24) + 0.8 * (WIDTH / 2) + 1.5 * noise * (1 + u),
      });
    const frames = Array.from({ length: 40 }, (_, i) =>
      expose(drawn(i), WIDTH, HEIGHT, noise, random, i),
    );
    const built = buildBackground(frames);
    if (!built.ok) throw new Error(built.reason.message);
    const empty = still([-50, 24], 9);
    let sum = 0;
    let n = 0;
    for (let y = 15; y < 33; y++) {
      for (let x = 8; x < WIDTH - 8; x++, n++) {
        const p = y * WIDTH + x;
        sum += (built.value.level[p] as number) - (empty[p] as number);
      }
    }
    // Each pixel is covered in 4 of 40 frames by 12 grey values more or so: 1.2 if they counted. The mean over all
    // scatters by 8 / sqrt(36 n).
    expect(Math.abs(sum / n)).toBeLessThan(5 * (noise / Math.sqrt(36 * n)));
  });

  test('read noise and gain are found from the scatter over time', () => {
    const random = generator(2);
    const frames: GreyFrame[] = Array.from({ length: 60 }, (_, index) => {
      const data = new Uint16Array(WIDTH * HEIGHT);
      for (let p = 0; p < data.length; p++) {
        const level = 5000 + 500 * (p % WIDTH);
        data[p] = Math.round(level + Math.sqrt(2000 + 2.5 * level) * random.normal());
      }
      return { index, width: WIDTH, height: HEIGHT, data, white: 65_535 };
    });
    const built = buildBackground(frames);
    if (!built.ok) throw new Error(built.reason.message);
    const { readVariance, gain } = built.value.noise;
    expect(gain).toBeGreaterThan(2.2);
    expect(gain).toBeLessThan(2.8);
    for (const level of [8000, 25_000, 50_000]) {
      const expected = 2000 + 2.5 * level;
      expect(Math.abs(readVariance + gain * level - expected)).toBeLessThan(0.12 * expected);
    }
  });

  test('hot, dead and flickering pixels are found, and nothing else', () => {
    const random = generator(6);
    const hot = 20 * WIDTH + 30;
    const dead = 10 * WIDTH + 60;
    const flickers = 30 * WIDTH + 12;
    const image = still([-50, 24], 9);
    const frames = Array.from({ length: 40 }, (_, i) => {
      const frame = expose(image, WIDTH, HEIGHT, 2, random, i);
      frame.data[hot] = 240;
      frame.data[dead] = Math.round(image[dead] as number);
      frame.data[flickers] = Math.round((image[flickers] as number) + 25 * random.normal());
      return frame;
    });
    const built = buildBackground(frames);
    if (!built.ok) throw new Error(built.reason.message);
    const found = [...(built.value.faulty ?? [])].flatMap((flag, p) => (flag === 1 ? [p] : []));
    expect(found.sort((a, b) => a - b)).toEqual([dead, hot, flickers].sort((a, b) => a - b));
  });

  test('the noise of an 8-bit film, rounding included, to a few per cent', () => {
    const random = generator(7);
    const image = still([-50, 24], 9);
    const frames = Array.from({ length: 48 }, (_, i) => expose(image, WIDTH, HEIGHT, 2, random, i));
    const built = buildBackground(frames);
    if (!built.ok) throw new Error(built.reason.message);
    const { readVariance, gain } = built.value.noise;
    expect(Math.abs((readVariance + gain * 80) / (4 + 1 / 12) - 1)).toBeLessThan(0.05);
  });

  test('a flickering lamp is not taken for noise, and leaves the scene as it is', () => {
    const random = generator(8);
    const image = still([-50, 24], 9);
    const frames = Array.from({ length: 48 }, (_, i) => {
      const lit = image.map((value) => value * (1 + 0.15 * Math.sin(0.7 * i)));
      return expose(lit, WIDTH, HEIGHT, 2, random, i);
    });
    const built = buildBackground(frames);
    if (!built.ok) throw new Error(built.reason.message);
    const { noise, level } = built.value;
    // Of the flicker alone the variance at grey 80 would be 72.
    expect((noise.readVariance + noise.gain * 80) / (4 + 1 / 12)).toBeGreaterThan(0.85);
    expect((noise.readVariance + noise.gain * 80) / (4 + 1 / 12)).toBeLessThan(1.25);
    const ratios = Array.from(level, (grey, p) => grey / (image[p] as number)).sort(
      (a, b) => a - b,
    );
    const middle = ratios[ratios.length >> 1] as number;
    expect(Math.abs(middle - 1)).toBeLessThan(0.15);
    for (const ratio of ratios) expect(Math.abs(ratio / middle - 1)).toBeLessThan(0.03);
  });

  test('frozen noise is not taken for none', () => {
    const frame = expose(still([-50, 24], 9), WIDTH, HEIGHT, 0, generator(3));
    const built = buildBackground([frame, { ...frame, index: 1 }, { ...frame, index: 2 }]);
    if (!built.ok) throw new Error(built.reason.message);
    // Variance of rounding to whole numbers.
    expect(built.value.noise.readVariance).toBeGreaterThanOrEqual(1 / 12);
  });

  test('two frames are too few, and frames of different sizes are refused', () => {
    const frame = expose(still([-50, 24], 9), WIDTH, HEIGHT, 1, generator(4));
    expect(buildBackground([frame, frame])).toMatchObject({
      ok: false,
      reason: { code: 'tooFewFrames' },
    });
    const other = { ...frame, width: HEIGHT, height: WIDTH };
    expect(buildBackground([frame, frame, other])).toMatchObject({
      ok: false,
      reason: { code: 'sizeChanges' },
    });
  });

  test('the gain of a brighter frame is read past the ball', () => {
    const random = generator(5);
    const frames = Array.from({ length: 20 }, (_, i) =>
      expose(still([-50, 24], 9), WIDTH, HEIGHT, 1, random, i),
    );
    const built = buildBackground(frames);
    if (!built.ok) throw new Error(built.reason.message);
    const bright = still([40, 24], 12).map((value) => 1.06 * value);
    const frame = expose(bright, WIDTH, HEIGHT, 1, random);
    expect(frameGain(frame, built.value)).toBeCloseTo(1.06, 2);
    // Faulty pixels do not count, were they most of the picture.
    const broken = Math.floor(0.6 * frame.data.length);
    const faulty = new Uint8Array(frame.data.length).fill(1, 0, broken);
    const data = frame.data.slice().fill(200, 0, broken);
    expect(frameGain({ ...frame, data }, { ...built.value, faulty })).toBeCloseTo(1.06, 2);
  });
});
