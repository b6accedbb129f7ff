import { describe, expect, it } from 'vitest';
import { isAvailable } from '../../../src/core/estimate';
import type { FrameRange } from '../../../src/core/film';
import type { GreyFrame } from '../../../src/core/frame';
import { failure, success } from '../../../src/core/reason';
import { createMeasurer } from '../../../src/reduction/measurer';
import { reduceShot } from '../../../src/reduction/reduceShot';
import { setupWarnings } from '../../../src/reduction/setupScene';
import { codedShiftU, judgeShake, launcherRect } from '../../../src/reduction/shake';
import { expose, generator } from '../image/rendering';
import { drawTexture, texture } from '../image/texture';
import { film, going, inputs, RATE, type Script, scriptedMeasurer, slowing } from './scriptedFilm';

const shiftOf = (x: number, y: number, u: number) => ({
  x,
  y,
  varX: u * u,
  varY: u * u,
  covXY: 0,
});
const placesOf = (shifts: readonly (readonly [number, number])[], u = 0.01) =>
  shifts.map(([x, y]) => ({ shift: shiftOf(x, y, u), launcher: null }));

describe('judgeShake', () => {
  const random = generator(8);

  it('takes nothing off a steady film, however uncertain its shifts', () => {
    const places = placesOf(
      Array.from({ length: 100 }, () => [0.02 * random.normal(), 0.02 * random.normal()] as const),
      0.02,
    );
    const { report, shiftIn } = judgeShake(places, 0);
    expect(report?.rms).toBeLessThan(0.011);
    expect(shiftIn(5).varX).toBeLessThan(0.01 ** 2);
  });

  it('reports the shaking without its own noise, and takes each shift off', () => {
    const true_ = Array.from(
      { length: 400 },
      () => [0.5 * random.normal(), 0.2 * random.normal()] as const,
    );
    const seen = true_.map(
      ([x, y]) => [x + 0.1 * random.normal(), y + 0.1 * random.normal()] as const,
    );
    const { report, shiftIn } = judgeShake(placesOf(seen, 0.1), 0);
    expect(report?.rms).toBeCloseTo(Math.hypot(0.5, 0.2), 1);
    expect(report?.u).toBeCloseTo(0.1, 6);
    const inUnits = true_.flatMap(([x, y], frame) => {
      const shift = shiftIn(frame);
      return [(shift.x - x) / Math.sqrt(shift.varX), (shift.y - y) / Math.sqrt(shift.varY)];
    });
    // Root mean square of 800 normal errors: 1 with a standard deviation of 0.025.
    expect(Math.abs(Math.hypot(...inUnits) / Math.sqrt(inUnits.length) - 1)).toBeLessThan(0.08);
  });

  it('lets a frame whose shift is not known be off by as much as the others are', () => {
    const places = [
      ...placesOf(Array.from({ length: 50 }, (_, i) => [i % 2 ? 0.4 : -0.4, 0] as const)),
      { shift: null, launcher: null },
    ];
    const { shiftIn } = judgeShake(places, 0);
    expect(shiftIn(50).x).toBe(0);
    expect(Math.sqrt(shiftIn(50).varX)).toBeCloseTo(0.4, 2);
    expect(shiftIn(50).varY).toBe(0);
  });

  it('tells nothing where most frames tell nothing', () => {
    const nothing = Array.from({ length: 10 }, () => ({ shift: null, launcher: null }));
    const { report, shiftIn } = judgeShake([...nothing, ...placesOf([[1, 1]])], 0);
    expect(report).toBeNull();
    expect(shiftIn(10)).toEqual(shiftOf(0, 0, 0));
  });
});

describe('codedShiftU', () => {
  it('widens shifts of film whose frames are drawn from each other', () => {
    expect(['ffv1', 'mjpeg', 'png', 'prores', 'rawvideo'].map(codedShiftU)).toEqual(
      Array.from({ length: 5 }, () => 0),
    );
    const places = placesOf(Array.from({ length: 60 }, (_, i) => [i % 2 ? 0.5 : -0.5, 0] as const));
    const shift = judgeShake(places, codedShiftU('avc')).shiftIn(3);
    expect(Math.sqrt(shift.varX)).toBeGreaterThan(0.025);
    expect(shift.x).toBeCloseTo(0.5, 1);
    // A steady film stays steady.
    const still = placesOf(
      Array.from({ length: 60 }, () => [0.001, 0] as const),
      0.001,
    );
    expect(judgeShake(still, codedShiftU('hevc')).shiftIn(3).varX).toBe(0);
  });
});

describe('launcherRect', () => {
  it('lies behind the muzzle plane, on both sides of the axis', () => {
    const [left, top, width, height] = launcherRect([100, 50], [-1, 0], 10);
    expect([left, top, left + width, top + height]).toEqual([103, 20, 200, 80]);
  });
});

/** 12 px a frame at 1.25 mm a pixel and 10 000 frames/s. */
const SPEED = 12 * 1.25e-3 * RATE;
const reduce = (script: Script) =>
  reduceShot(inputs(), film, scriptedMeasurer(script), () => undefined, going);
const velocityOf = ({ result }: Awaited<ReturnType<typeof reduce>>) => {
  if (!isAvailable(result.exitVelocity)) throw new Error(result.exitVelocity.unavailable.message);
  return result.exitVelocity;
};
const codesOf = ({ result }: Awaited<ReturnType<typeof reduce>>) =>
  result.warnings.map(({ code }) => code);

describe('a shaken film', () => {
  /** The camera swings once while the ball is in view: to first order a speed of its own. */
  const swing = (frame: number): readonly [number, number] => [
    2 * Math.sin((frame - 16) / 8),
    0.8 * Math.cos(frame / 5),
  ];
  const shaken: Script = { at: slowing(12, 8), shake: swing };

  it('gives the true speed and places where the shaking is seen', async () => {
    const reduction = await reduce(shaken);
    const v = velocityOf(reduction);
    expect(Math.abs(v.value - SPEED)).toBeLessThan(3 * v.u);
    expect(codesOf(reduction)).toContain('cameraShakes');
    const { shake, positions } = reduction.result;
    expect(shake?.u).toBeCloseTo(0.01, 3);
    expect(shake?.most).toBeGreaterThan(1.5);
    const still = positions.find(({ frame }) => frame === 14);
    const [dx, dy] = swing(14);
    expect(still?.shift[0]).toBeCloseTo(dx, 1);
    expect(still?.shift[1]).toBeCloseTo(dy, 1);
    const expected = ((slowing(12, 8)(14)?.[0] ?? 0) - 100) * 1.25e-3;
    expect(Math.abs((still?.s ?? 0) - expected)).toBeLessThan(4 * (still?.us ?? 0));
    // The place reported is that in the frame as it is; its uncertainty counts the shift's.
    expect(still?.x).toBeCloseTo((slowing(12, 8)(14)?.[0] ?? 0) + dx, 0);
    expect(still?.ux).toBeGreaterThan(0.05);
    expect(still?.ux).toBeLessThan(0.06);
  });

  it('would give a wrong speed otherwise', async () => {
    const v = velocityOf(await reduce({ ...shaken, shakeSeen: false }));
    expect(Math.abs(v.value - SPEED)).toBeGreaterThan(3 * v.u);
  });

  it('is not spoken of where it stands still', async () => {
    const reduction = await reduce({ at: slowing(12, 8) });
    expect(codesOf(reduction)).not.toContain('cameraShakes');
    expect(codesOf(reduction)).not.toContain('launcherMoves');
    expect(reduction.result.shake?.rms).toBe(0);
    expect(reduction.result.positions.every(({ shift }) => shift[0] === 0)).toBe(true);
  });
});

describe('a launcher that moves', () => {
  it('is told from the scene before the ball leaves', async () => {
    const reduction = await reduce({
      at: slowing(12, 20),
      recoil: (frame) => (frame > 10 ? -0.1 * (frame - 10) : 0),
    });
    expect(codesOf(reduction)).toContain('launcherMoves');
    const warning = reduction.result.warnings.find(({ code }) => code === 'launcherMoves');
    expect(warning?.message).toMatch(/up to 0\.[89]/);
  });

  it('is none where it moves only afterwards', async () => {
    const reduction = await reduce({
      at: slowing(12, 20),
      recoil: (frame) => (frame > 24 ? -2 : 0),
    });
    expect(codesOf(reduction)).not.toContain('launcherMoves');
  });
});

describe('a film of pixels that shake', () => {
  const WIDTH = 400;
  const HEIGHT = 120;
  const FRAMES = 40;
  const scene = texture(WIDTH, HEIGHT, 300, 1, 12);
  const ballAt = (frame: number): number => 60 + 11 * (frame - 5);
  const random = generator(3);
  const shifts = Array.from(
    { length: FRAMES },
    () => [0.7 * random.normal(), 0.7 * random.normal()] as const,
  );
  const frames = shifts.map(([dx, dy], index) => {
    const image = drawTexture(scene, dx, dy);
    const [x, y] = [ballAt(index) + dx, 60 + dy];
    if (x > 0 && x < WIDTH + 20) drawBall(image, x, y);
    return expose(image, WIDTH, HEIGHT, 1.5, random, index);
  });
  /** A bright disc of 12 px radius, sampled 8 x 8 times a pixel. */
  function drawBall(image: Float64Array, x: number, y: number): void {
    for (let py = Math.max(0, Math.floor(y) - 14); py < Math.min(HEIGHT, y + 14); py++) {
      for (let px = Math.max(0, Math.floor(x) - 14); px < Math.min(WIDTH, x + 14); px++) {
        let inside = 0;
        for (let k = 0; k < 64; k++) {
          const sx = px + ((k % 8) + 0.5) / 8 - 0.5;
          const sy = py + (Math.floor(k / 8) + 0.5) / 8 - 0.5;
          if (Math.hypot(sx - x, sy - y) < 12) inside++;
        }
        const p = py * WIDTH + px;
        image[p] = (image[p] as number) * (1 - inside / 64) + (235 * inside) / 64;
      }
    }
  }
  const pixels = {
    async *frames({ start, end, step = 1 }: FrameRange): AsyncGenerator<GreyFrame> {
      for (let index = start; index < Math.min(end, FRAMES); index += step) {
        const frame = frames[index] as GreyFrame;
        yield { ...frame, data: frame.data.slice() };
      }
    },
  };

  it('puts every centre where the ball is against the scene', async () => {
    const given = inputs({ muzzle: { point: [100, 60], u: 0.5, axis: [1, 0] } });
    const info = { ...given.info, width: WIDTH, height: HEIGHT, frameCount: FRAMES };
    const { result } = await reduceShot(
      { ...given, info },
      pixels,
      createMeasurer(),
      () => undefined,
      going,
    );
    expect(result.shake?.rms).toBeGreaterThan(0.8);
    expect(result.shake?.rms).toBeLessThan(1.2);
    const whole = result.positions.filter(
      ({ frame, x }) => x !== null && ballAt(frame) > 20 && ballAt(frame) < WIDTH - 20,
    );
    expect(whole.length).toBeGreaterThan(25);
    // Where the scene stands on average is where the background has it: one offset is free.
    const off = whole.map((p) => (p.x as number) - p.shift[0] - ballAt(p.frame));
    const mean = off.reduce((sum, d) => sum + d / off.length, 0);
    expect(Math.abs(mean)).toBeLessThan(0.3);
    const rms = Math.sqrt(off.reduce((sum, d) => sum + (d - mean) ** 2 / off.length, 0));
    expect(rms).toBeLessThan(0.05);
    const untouched = whole.map((p) => (p.x as number) - ballAt(p.frame));
    expect(Math.hypot(...untouched) / Math.sqrt(untouched.length)).toBeGreaterThan(0.4);
    if (!isAvailable(result.exitVelocity)) throw new Error('no exit velocity');
    expect(Math.abs(result.exitVelocity.value / (11 * 1.25e-3 * RATE) - 1)).toBeLessThan(0.01);
  });
});

describe('a camera moved between shots of a setup', () => {
  const warningsOf = (move: Parameters<typeof setupWarnings>[0]) => setupWarnings(move);
  const since = (x: number, y: number, u: number) => ({
    shotName: '2031-05-01 A',
    move: success(shiftOf(x, y, u)),
  });

  it('is said from half a pixel on, and farther where it is not sure', () => {
    expect(warningsOf(since(0.3, 0.3, 0.02))).toEqual([]);
    expect(warningsOf(since(0.6, 0.6, 0.2))).toEqual([]);
    const [warning] = warningsOf(since(3, -4, 0.02));
    expect(warning?.code).toBe('cameraMoved');
    expect(warning?.message).toContain('5.0 px');
    expect(warning?.message).toContain('2031-05-01 A');
  });

  it('is said where the scene is another, not where it is too plain to tell', () => {
    const with_ = (code: string) =>
      warningsOf({ shotName: 'A', move: failure(code, 'Not the same.') }).map((w) => w.code);
    expect(with_('sceneDiffers')).toEqual(['cameraMoved']);
    expect(with_('sceneSizeDiffers')).toEqual(['cameraMoved']);
    expect(with_('sceneTooPlain')).toEqual([]);
    expect(warningsOf(null)).toEqual([]);
  });

  it('is noticed in a reduction that is given the earlier scene', async () => {
    const random = generator(17);
    const drawn = (dx: number) => drawTexture(texture(400, 60, 150, 2, 5), dx, 0);
    const shot = (dx: number, setupScene: Parameters<typeof reduceShot>[0]['setupScene']) => {
      const image = drawn(dx);
      const noisy = Array.from({ length: 5 }, () => expose(image, 400, 60, 1.5, random));
      const still = {
        async *frames({ start, end, step = 1 }: FrameRange): AsyncGenerator<GreyFrame> {
          for (let index = start; index < Math.min(end, 40); index += step) {
            const { data, ...frame } = noisy[index % noisy.length] as GreyFrame;
            yield { ...frame, index, data: data.slice() };
          }
        },
      };
      return reduceShot(
        { ...inputs(), ...(setupScene === undefined ? {} : { setupScene }) },
        still,
        scriptedMeasurer({ at: () => null }),
        () => undefined,
        going,
      );
    };
    const first = await shot(0, null);
    const earlier = { shotName: '2031-05-02 A', fingerprint: first.fingerprint };
    expect(first.fingerprint.levels).toHaveLength(50 * 7);
    expect(codesOf(first)).not.toContain('cameraMoved');
    expect(codesOf(await shot(0, earlier))).not.toContain('cameraMoved');
    const moved = await shot(2.4, earlier);
    expect(codesOf(moved)).toContain('cameraMoved');
    expect(moved.result.warnings.find((w) => w.code === 'cameraMoved')?.message).toMatch(
      /\+2\.[34] across/,
    );
  });
});
