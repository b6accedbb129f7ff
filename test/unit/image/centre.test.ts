import { describe, expect, test } from 'vitest';
import { measureCentre } from '../../../src/image/centre';
import type { Background, BallModel } from '../../../src/image/types';
import { type BallScene, expose, generator, render } from './rendering';
import { draw, type Kind, lamp, measure as measureAll, run } from './trials';

const soft = { optics: 0.6 };
const uneven = (x: number, y: number) => 50 + 0.3 * x + 0.1 * y;

describe('centre over many pictures', () => {
  // Largest bias and root mean square error of either coordinate, px. Normalised errors must be near
  // one: smaller and the uncertainty is exaggerated, larger and it is not to be believed.
  test.each<[string, number, number, Kind]>([
    ['even disc', 0.02, 0.05, { radius: 12, noise: 6, scene: soft }],
    ['even disc, contrast ten times the noise', 0.02, 0.06, { radius: 12, noise: 12, scene: soft }],
    [
      'matt ball on an uneven background',
      0.04,
      0.05,
      { radius: 14, noise: 4, scene: { ...soft, shade: lamp(220), background: uneven } },
    ],
    [
      'dark ball on a light background',
      0.02,
      0.05,
      { radius: 14, noise: 4, scene: { ...soft, shade: lamp(60), background: () => 160 } },
    ],
    [
      'matt ball half behind a wall',
      0.1,
      0.12,
      { radius: 14, noise: 4, scene: { ...soft, shade: lamp(220) }, wallAt: 0 },
    ],
    [
      'matt ball nearly out from behind a wall',
      0.015,
      0.04,
      { radius: 14, noise: 4, scene: { ...soft, shade: lamp(220) }, wallAt: -0.9 },
    ],
    [
      'a fragment across the outline',
      0.04,
      0.06,
      { radius: 14, noise: 4, scene: { ...soft, shade: lamp(220) }, fragment: [9, 6] },
    ],
  ])('%s', (_, mostBias, mostError, kind) => {
    const { bias, rms, normalised, refused } = run(kind, 100, 5);
    // Alone, before the ball's look is learnt, half an outline need not tell a shadow from a wall: few may be refused, none measured wrong.
    expect(refused.length).toBeLessThanOrEqual(kind.wallAt === undefined ? 0 : 3);
    expect(Math.max(Math.abs(bias[0]), Math.abs(bias[1]))).toBeLessThan(mostBias);
    expect(Math.max(...rms)).toBeLessThan(mostError);
    expect(normalised).toBeGreaterThan(0.6);
    expect(normalised).toBeLessThan(1.3);
  });

  test('a scene known from few frames does not draw the outline outwards', () => {
    // Errors in variables: slopes taken at the scene's own noise go with the residuals (Fuller, Measurement Error
    // Models, Wiley 1987, section 1.1); the outline would be off by 0.03 px or so.
    const [width, height, radius, noise, averaged] = [64, 64, 16, 20, 4];
    const centre = [31.6, 32.3] as const;
    const random = generator(9);
    const picture = render({ ...soft, width, height, centre, radius, shade: () => 120 });
    const empty = render({ width, height, centre: [-99, 0], radius });
    const radii = Array.from({ length: 80 }, (_, index) => {
      const background: Background = {
        ...{ width, height, white: 255, averaged },
        level: Float32Array.from(
          empty,
          (grey) => grey + (noise / Math.sqrt(averaged)) * random.normal(),
        ),
        noise: { readVariance: noise ** 2, gain: 0 },
      };
      const frame = expose(picture, width, height, noise, random, index);
      const region = [0, 0, width, height] as const;
      const measured = measureCentre(frame, background, centre, { radius, blur: [0, 0], region });
      if (!measured.ok) throw new Error(measured.reason.message);
      return measured.value.radius.value;
    });
    const mean = radii.reduce((sum, value) => sum + value / radii.length, 0);
    const spread = Math.sqrt(
      radii.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (radii.length - 1),
    );
    expect(Math.abs(mean - radius)).toBeLessThan((2.5 * spread) / Math.sqrt(radii.length));
  });

  test('blur of one radius', () => {
    const scene = { ...soft, blur: [14, 1] as const };
    const even = run({ radius: 14, noise: 6, scene }, 60, 6);
    expect(Math.max(...even.bias.map(Math.abs))).toBeLessThan(0.03);
    expect(Math.max(...even.rms)).toBeLessThan(0.1);
    expect(even.normalised).toBeLessThan(1.3);
    // Blur and shading together are told apart less well.
    const matt = run({ radius: 14, noise: 4, scene: { ...scene, shade: lamp(220) } }, 40, 6);
    expect(Math.max(...matt.rms)).toBeLessThan(0.15);
    expect(matt.normalised).toBeLessThan(1.3);
  });

  test('a larger ball, sharper in proportion', () => {
    const { rms, normalised } = run(
      { radius: 32, noise: 4, scene: { optics: 0.8, shade: lamp(220) } },
      25,
      7,
    );
    expect(Math.max(...rms)).toBeLessThan(0.05);
    expect(normalised).toBeLessThan(1.4);
  });

  test('rolling shutter: the centre on its own line, with the motion per line told; not without', () => {
    const motionPerLine = [0.03, 0.15] as const;
    const scene = { ...soft, shade: lamp(220), motionPerLine };
    const pictures = draw({ radius: 14, noise: 4, scene }, 60, 8);
    const told = measureAll(pictures, { readout: { direction: [0, 1], motionPerLine } });
    expect(Math.max(...told.rms)).toBeLessThan(0.08);
    expect(told.measured[0]?.radius.value).toBeCloseTo(14, 0);
    const untold = measureAll(pictures.slice(0, 20));
    // Drawn out by 1 / (1 - 0.15) along the readout, it does not pass for a circle as well: it is refused,
    // found too large, or seen in part only.
    const passed = untold.measured.filter(
      ({ radius, visible }) => visible > 0.9 && Math.abs(radius.value - 14) < 0.3,
    );
    expect(passed).toEqual([]);
    expect(untold.measured.length + untold.refused.length).toBe(20);
  });
});

const SIZE = 100;
const flat = (noise: number): Background => ({
  width: SIZE,
  height: SIZE,
  white: 255,
  noise: { readVariance: noise * noise + 1 / 12, gain: 0 },
  level: new Float32Array(SIZE * SIZE).fill(60),
});

const ball: BallModel = { radius: 18, blur: [0, 0], region: [0, 0, SIZE, SIZE] };

const measure = (scene: Partial<BallScene>, at: readonly [number, number] = [50, 50], noise = 3) =>
  measureCentre(
    expose(
      render({ width: SIZE, height: SIZE, centre: [50, 50], radius: 18, ...soft, ...scene }),
      SIZE,
      SIZE,
      noise,
      generator(3),
    ),
    flat(noise),
    at,
    ball,
  );

describe('what a measurement says besides the centre', () => {
  test('share of the outline, contrast, radius, saturation', () => {
    const whole = measure({ shade: () => 255 });
    if (!whole.ok) throw new Error(whole.reason.message);
    expect(whole.value.visible).toBe(1);
    expect(whole.value.contrast).toBeGreaterThan(185);
    expect(whole.value.radius.value).toBeCloseTo(18, 1);
    expect(whole.value.saturated).toBeGreaterThan(0.4);
    const half = measure({ wall: (x) => x < 50 }, [55, 50]);
    if (!half.ok) throw new Error(half.reason.message);
    expect(half.value.visible).toBeGreaterThan(0.4);
    expect(half.value.visible).toBeLessThan(0.6);
    expect(half.value.saturated).toBe(0);
    // Half an outline fixes the direction it opens to least.
    expect(half.value.varX).toBeGreaterThan(2 * half.value.varY);
  });

  test('a start a third of the radius off leads to the same centre', () => {
    const near = measure({});
    const far = measure({}, [56, 47]);
    if (!near.ok || !far.ok) throw new Error('not measured');
    expect(Math.hypot(near.value.x - far.value.x, near.value.y - far.value.y)).toBeLessThan(0.02);
  });

  test('a flicker of the light is taken out', () => {
    const image = render({ width: SIZE, height: SIZE, centre: [50.3, 49.8], radius: 18, ...soft });
    const frame = expose(
      image.map((v) => 1.08 * v),
      SIZE,
      SIZE,
      3,
      generator(4),
    );
    const found = measureCentre(frame, flat(3), [50, 50], ball);
    if (!found.ok) throw new Error(found.reason.message);
    expect(Math.hypot(found.value.x - 50.3, found.value.y - 49.8)).toBeLessThan(0.06);
  });
});

describe('a ball over the edge of the frame', () => {
  // Its middle is outside the picture in the last two; what shows of the disc there is 41 and 34 %.
  test.each([94.3, 101.6, 103.9])('middle at x = %d of 100', (x) => {
    const found = measure({ centre: [x, 50.2] }, [Math.min(99, x - 3), 52]);
    if (!found.ok) throw new Error(found.reason.message);
    const { varX, varY } = found.value;
    expect(Math.abs(found.value.x - x)).toBeLessThan(Math.min(0.2, 4 * Math.sqrt(varX)));
    expect(Math.abs(found.value.y - 50.2)).toBeLessThan(Math.min(0.2, 4 * Math.sqrt(varY)));
  });
});

describe('faulty pixels', () => {
  test('bright ones around the ball and on its outline move nothing', () => {
    const image = render({ width: SIZE, height: SIZE, centre: [50.3, 49.8], radius: 18, ...soft });
    const random = generator(9);
    const clean = expose(image, SIZE, SIZE, 3, generator(5));
    const faulty = new Uint8Array(SIZE * SIZE);
    const data = clean.data.slice();
    for (let i = 0; i < 900; i++) {
      const p = Math.floor(random.uniform() * SIZE * SIZE);
      faulty[p] = 1;
      data[p] = 255;
    }
    const found = measureCentre({ ...clean, data }, { ...flat(3), faulty }, [52, 48], ball);
    if (!found.ok) throw new Error(found.reason.message);
    expect(found.value.visible).toBeGreaterThan(0.95);
    expect(Math.hypot(found.value.x - 50.3, found.value.y - 49.8)).toBeLessThan(0.06);
  });
});

describe('what is refused, and why', () => {
  test.each<[string, string, Partial<BallScene>, readonly [number, number]]>([
    ['noBall', 'an empty place', { centre: [-60, 50] }, [50, 50]],
    ['arcTooShort', 'a ball two thirds hidden', { wall: (x) => x < 59 }, [61, 50]],
    ['atFrameEdge', 'a ball mostly outside the frame', { centre: [110.5, 50] }, [99, 50]],
  ])('%s: %s', (code, _, scene, at) => {
    const found = measure(scene, at);
    expect(found).toMatchObject({ ok: false, reason: { code } });
    if (!found.ok) expect(found.reason.remedy).toBeTruthy();
  });

  test('a long straight thing is no ball', () => {
    const found = measure({
      fragment: (_, y) => (y > 47 && y < 53 ? 180 : null),
      centre: [-60, 0],
    });
    expect(found.ok ? 'measured' : found.reason.code).toMatch(/^(noBall|arcTooShort)$/);
  });

  test('lowContrast: a ball that hardly differs from the background', () => {
    expect(measure({ shade: () => 66 }, [50, 50], 1)).toMatchObject({
      ok: false,
      reason: { code: 'lowContrast' },
    });
  });

  test('radiusMismatch: a disc of another size', () => {
    const found = measure({ radius: 20.5 });
    expect(found).toMatchObject({ ok: false, reason: { code: 'radiusMismatch' } });
    if (!found.ok) expect(found.reason.message).toContain('18.0 px');
  });
});
