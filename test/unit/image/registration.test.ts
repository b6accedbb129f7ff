import { describe, expect, it } from 'vitest';
import { buildBackground } from '../../../src/image/background';
import { backgroundMover, frameBack } from '../../../src/image/moved';
import { createRegistrar, createRegistrars, type Shift } from '../../../src/image/registration';
import { varianceKept } from '../../../src/image/resample';
import { steadyBackground } from '../../../src/image/steadyBackground';
import type { Background } from '../../../src/image/types';
import { expose, generator } from './rendering';
import { cover, drawTexture, texture } from './texture';

const WIDTH = 320;
const HEIGHT = 160;
const NOISE = 2;
const scene = texture(WIDTH, HEIGHT, 380, 0.8, 3);

function backgroundOf(frames: Parameters<typeof buildBackground>[0]): Background {
  const background = buildBackground(frames);
  if (!background.ok) throw new Error(background.reason.message);
  return background.value;
}

const random = generator(11);
const still = drawTexture(scene, 0, 0);
const background = backgroundOf(
  Array.from({ length: 40 }, (_, i) => expose(still, WIDTH, HEIGHT, NOISE, random, i)),
);

const found = (shift: Shift | null): Shift => {
  if (shift === null) throw new Error('no shift');
  return shift;
};

describe('createRegistrar', () => {
  const register = createRegistrar(background);

  it('finds sub-pixel shifts with true uncertainties, past a ball and in another light', () => {
    const inUnits: number[] = [];
    for (let i = 0; i < 80; i++) {
      const dx = 3 * (random.uniform() - 0.5);
      const dy = 3 * (random.uniform() - 0.5);
      const light = 0.8 + 0.3 * random.uniform();
      const image = drawTexture(scene, dx, dy).map((grey) => light * grey + 4);
      const frame = expose(image, WIDTH, HEIGHT, NOISE, random, i);
      cover(frame, 20 + 3.5 * i, 80, 25, 220);
      const shift = found(register(frame));
      expect(Math.abs(shift.x - dx)).toBeLessThan(0.05);
      expect(Math.abs(shift.y - dy)).toBeLessThan(0.05);
      expect(Math.sqrt(shift.varX)).toBeLessThan(0.02);
      inUnits.push((shift.x - dx) / Math.sqrt(shift.varX), (shift.y - dy) / Math.sqrt(shift.varY));
    }
    const within = (k: number) => inUnits.filter((z) => Math.abs(z) < k).length / inUnits.length;
    // Of 160 normal errors 109 +- 6 lie within one standard uncertainty, 152.6 +- 2.7 within two.
    expect(within(1)).toBeGreaterThan(0.55);
    expect(within(1)).toBeLessThan(0.81);
    expect(within(2)).toBeGreaterThan(0.89);
  });

  it('counts shifts positive to the right and down', () => {
    const moved = drawTexture(scene, 1.5, -0.75);
    const shift = found(register(expose(moved, WIDTH, HEIGHT, NOISE, random)));
    expect(shift.x).toBeCloseTo(1.5, 1);
    expect(shift.y).toBeCloseTo(-0.75, 1);
  });

  it('finds shifts of several pixels', () => {
    const moved = drawTexture(scene, -6.3, 4.6);
    const shift = found(register(expose(moved, WIDTH, HEIGHT, NOISE, random)));
    expect(Math.abs(shift.x + 6.3)).toBeLessThan(4 * Math.sqrt(shift.varX));
    expect(Math.abs(shift.y - 4.6)).toBeLessThan(4 * Math.sqrt(shift.varY));
  });

  it('tells a part that moves by itself from the rest', () => {
    const part = [40, 30, 100, 100] as const;
    const frame = expose(drawTexture(scene, 0.2, 0.1), WIDTH, HEIGHT, NOISE, random);
    const other = expose(drawTexture(scene, 1.1, 0.1), WIDTH, HEIGHT, NOISE, random);
    for (let y = part[1]; y < part[1] + part[3]; y++) {
      for (let x = part[0]; x < part[0] + part[2]; x++) {
        frame.data[y * WIDTH + x] = other.data[y * WIDTH + x] as number;
      }
    }
    const [rest, inside] = createRegistrars(background, [{ outside: part }, { inside: part }]).map(
      (registrar) => found(registrar(frame)),
    ) as [Shift, Shift];
    expect(Math.abs(rest.x - 0.2)).toBeLessThan(4 * Math.sqrt(rest.varX));
    expect(Math.abs(inside.x - 1.1)).toBeLessThan(4 * Math.sqrt(inside.varX) + 0.02);
  });

  it('is not held back by pixels stuck at one value', () => {
    const stuck = Array.from({ length: 400 }, () => Math.floor(random.uniform() * WIDTH * HEIGHT));
    const stick = (frame: ReturnType<typeof expose>) => {
      for (const p of stuck) frame.data[p] = 255;
      return frame;
    };
    const frames = Array.from({ length: 20 }, (_, i) =>
      stick(expose(still, WIDTH, HEIGHT, NOISE, random, i)),
    );
    const faulty = new Uint8Array(WIDTH * HEIGHT);
    for (const p of stuck) faulty[p] = 1;
    const known = createRegistrar({ ...backgroundOf(frames), faulty });
    for (const [dx, dy] of [
      [0.4, -0.3],
      [1.2, 0.7],
    ] as const) {
      const frame = stick(expose(drawTexture(scene, dx, dy), WIDTH, HEIGHT, NOISE, random));
      const shift = found(known(frame));
      expect(Math.abs(shift.x - dx)).toBeLessThan(4 * Math.sqrt(shift.varX));
      expect(Math.abs(shift.y - dy)).toBeLessThan(4 * Math.sqrt(shift.varY));
    }
  });

  it('says nothing of a plain scene, of another one, or where only one direction shows', () => {
    const plain = new Float64Array(WIDTH * HEIGHT).fill(110);
    const frames = (image: Float64Array) =>
      Array.from({ length: 20 }, (_, i) => expose(image, WIDTH, HEIGHT, NOISE, random, i));
    const flat = backgroundOf(frames(plain));
    expect(createRegistrar(flat)(expose(plain, WIDTH, HEIGHT, NOISE, random))).toBeNull();
    const other = drawTexture(texture(WIDTH, HEIGHT, 380, 0.8, 99), 0, 0);
    expect(register(expose(other, WIDTH, HEIGHT, NOISE, random))).toBeNull();
    const upright = Float64Array.from(plain, (grey, p) => grey + ((p % WIDTH) % 40 < 20 ? 50 : 0));
    const stripes = backgroundOf(frames(upright));
    expect(createRegistrar(stripes)(expose(upright, WIDTH, HEIGHT, NOISE, random))).toBeNull();
  });
});

describe('moved pictures', () => {
  it('put the background where a frame has the scene, inside the rectangle only, and undo it', () => {
    const move = backgroundMover(background);
    const rect = [100, 40, 80, 60] as const;
    const image = drawTexture(scene, 0.4, -0.3);
    const { level } = move([0.4, -0.3], rect);
    let squares = 0;
    for (let y = 40; y < 100; y++) {
      for (let x = 100; x < 180; x++) {
        const p = y * WIDTH + x;
        squares += ((level[p] as number) - (image[p] as number)) ** 2;
      }
    }
    // Noise of 40 frames' mean and a little for the sharpest spots; unmoved the difference is some ten grey values.
    expect(Math.sqrt(squares / (80 * 60))).toBeLessThan(1.2);
    expect(level[10 * WIDTH + 10]).toBe(background.level[10 * WIDTH + 10]);
    const elsewhere = move([0.4, -0.3], [200, 40, 40, 40]);
    expect(elsewhere.level[50 * WIDTH + 120]).toBe(background.level[50 * WIDTH + 120]);
    expect(move([0.01, 0], rect)).toBe(background);
  });

  it('put a frame back where the scene stands', () => {
    const frame = expose(drawTexture(scene, 1.3, 0.6), WIDTH, HEIGHT, 0, random);
    const back = frameBack(frame, [1.3, 0.6], [60, 20, 200, 120]);
    let worst = 0;
    for (let y = 20; y < 140; y++) {
      for (let x = 60; x < 260; x++) {
        const p = y * WIDTH + x;
        worst = Math.max(worst, Math.abs((back.data[p] as number) - (still[p] as number)));
      }
    }
    expect(worst).toBeLessThan(6);
    expect(back.data[0]).toBe(frame.data[0]);
  });

  it('lose as much of the noise as is said', () => {
    const flat = new Float64Array(WIDTH * HEIGHT).fill(120);
    const frame = expose(flat, WIDTH, HEIGHT, 20, random);
    const back = frameBack(frame, [0.5, 0.3], [20, 20, 280, 120]);
    let squares = 0;
    for (let y = 20; y < 140; y++) {
      for (let x = 20; x < 300; x++) squares += ((back.data[y * WIDTH + x] as number) - 120) ** 2;
    }
    expect(squares / (280 * 120) / 400).toBeCloseTo(varianceKept([0.5, 0.3]), 1);
    expect(varianceKept([0, 0])).toBeCloseTo(1, 6);
  });
});

describe('steadyBackground', () => {
  const shaken = Array.from({ length: 40 }, (_, i) =>
    expose(
      drawTexture(scene, 0.9 * random.normal(), 0.9 * random.normal()),
      WIDTH,
      HEIGHT,
      NOISE,
      random,
      i,
    ),
  );
  const steady = steadyBackground(shaken);
  if (!steady.ok) throw new Error(steady.reason.message);

  /** Root-mean-square difference from the scene, put to where the background has it. */
  const smear = (built: Background): number => {
    const at = found(createRegistrar(built)(expose(still, WIDTH, HEIGHT, 0, random)));
    const image = drawTexture(scene, -at.x, -at.y);
    let squares = 0;
    let n = 0;
    for (let y = 10; y < HEIGHT - 10; y++) {
      for (let x = 10; x < WIDTH - 10; x++, n++) {
        const p = y * WIDTH + x;
        squares += ((built.level[p] as number) - (image[p] as number)) ** 2;
      }
    }
    return Math.sqrt(squares / n);
  };

  it('is as sharp as the scene where the frames shake', () => {
    expect(smear(backgroundOf(shaken))).toBeGreaterThan(1.2);
    expect(smear(steady.value)).toBeLessThan(0.5);
  });

  it('tells the noise of single frames', () => {
    const { readVariance, gain } = steady.value.noise;
    expect(Math.abs(Math.sqrt(readVariance + gain * 110) / NOISE - 1)).toBeLessThan(0.1);
  });

  it('is the plain background where they stand still', () => {
    const frames = Array.from({ length: 12 }, (_, i) =>
      expose(still, WIDTH, HEIGHT, NOISE, random, i),
    );
    expect(steadyBackground(frames)).toEqual(buildBackground(frames));
  });
});
