import { describe, expect, it } from 'vitest';
import { buildBackground } from '../../../src/image/background';
import { fingerprintOf, sceneMove } from '../../../src/image/sceneFingerprint';
import { expose, generator } from './rendering';
import { cover, drawTexture, type Texture, texture } from './texture';

const WIDTH = 512;
const HEIGHT = 256;
const scene = texture(WIDTH, HEIGHT, 500, 1.5, 21);
const random = generator(4);

/** Background of a shot whose camera has been moved by (dx, dy) and its light changed. */
function shot(dx: number, dy: number, light = 1, what: Texture = scene, clutter = false) {
  const image = drawTexture(what, dx, dy).map((grey) => light * grey);
  const frames = Array.from({ length: 4 }, (_, i) => {
    const frame = expose(image, what.width, what.height, 2, random, i);
    if (clutter) cover(frame, 300, 130, 45, 30);
    return frame;
  });
  const background = buildBackground(frames);
  if (!background.ok) throw new Error(background.reason.message);
  return background.value;
}

const first = fingerprintOf(shot(0, 0));
const codeOf = (outcome: ReturnType<typeof sceneMove>) =>
  outcome.ok ? 'given' : outcome.reason.code;

describe('scene fingerprint', () => {
  it('is small and survives being kept as text', () => {
    const text = JSON.stringify(first);
    expect(text.length).toBeLessThan(12_000);
    expect(sceneMove(shot(0, 0), JSON.parse(text)).ok).toBe(true);
  });

  it('tells moves between shots within their uncertainty, in other light and past what is new', () => {
    const inUnits: number[] = [];
    for (let i = 0; i < 8; i++) {
      const dx = 8 * (random.uniform() - 0.5);
      const dy = 8 * (random.uniform() - 0.5);
      const move = sceneMove(shot(dx, dy, 0.85 + 0.3 * random.uniform(), scene, true), first);
      if (!move.ok) throw new Error(move.reason.message);
      expect(Math.hypot(move.value.x - dx, move.value.y - dy)).toBeLessThan(0.2);
      expect(Math.sqrt(move.value.varX + move.value.varY)).toBeLessThan(0.1);
      inUnits.push(
        (move.value.x - dx) / Math.sqrt(move.value.varX),
        (move.value.y - dy) / Math.sqrt(move.value.varY),
      );
    }
    expect(Math.hypot(...inUnits) / Math.sqrt(inUnits.length)).toBeLessThan(2);
  });

  it('follows a camera moved by tens of pixels', () => {
    const move = sceneMove(shot(-41.5, 23.25), first);
    expect(move.ok && move.value.x).toBeCloseTo(-41.5, 0);
    expect(move.ok && move.value.y).toBeCloseTo(23.25, 0);
  });

  it('says when the scene is another, plain, or of another size', () => {
    expect(codeOf(sceneMove(shot(0, 0, 1, texture(WIDTH, HEIGHT, 500, 1.5, 77)), first))).toBe(
      'sceneDiffers',
    );
    const plain = { ...scene, spots: [] };
    expect(codeOf(sceneMove(shot(0, 0, 1, plain), fingerprintOf(shot(0, 0, 1, plain))))).toBe(
      'sceneTooPlain',
    );
    const smaller = texture(256, 128, 120, 1.5, 21);
    expect(codeOf(sceneMove(shot(0, 0, 1, smaller), first))).toBe('sceneSizeDiffers');
  });
});
