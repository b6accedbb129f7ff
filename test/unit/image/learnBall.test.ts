import { describe, expect, test } from 'vitest';
import { learnBrightness } from '../../../src/image/hiddenPixels';
import { learnBall } from '../../../src/image/learnBall';
import type { BallModel } from '../../../src/image/types';
import { draw, type Kind, lamp, measure, run } from './trials';

const scene = { optics: 0.6, shade: lamp(220), blur: [9, 0] as const };
const told: BallModel = { radius: 14.1, radiusU: 0.1, blur: [8, 0], region: [0, 0, 200, 200] };

describe('learning the ball from frames that show it well', () => {
  const clear: Kind = {
    radius: 14,
    noise: 4,
    scene,
    ball: told,
  };
  // As a reduction learns it: the look, then the brightness that tells what hides the ball.
  const seen = run(clear, 20, 31).measured;
  const learned = learnBrightness(learnBall(told, seen), seen);

  test('radius and length of the blur are found though told wrong', () => {
    expect(learned.radius).toBeGreaterThan(13.9);
    expect(learned.radius).toBeLessThan(14.1);
    expect(learned.look?.stretch).toBeGreaterThan(9 / 8 - 0.05);
    expect(learned.look?.stretch).toBeLessThan(9 / 8 + 0.05);
  });

  test('the radius of a small soft disc is not too small by the curvature of its edge', () => {
    // A straight edge would have it too small by sigma squared over twice the radius, 0.04 px here.
    const disc: Kind = { radius: 12, noise: 2, scene: { optics: 0.9 } };
    const { radius, radiusU } = learnBall(
      { ...told, radius: 12.1, blur: [0, 0] },
      run(disc, 20, 36).measured,
    );
    expect(radiusU).toBeLessThan(0.01);
    expect(Math.abs(radius - 12)).toBeLessThan(0.015);
  });

  test('half-hidden frames are measured better with it', () => {
    const hidden = draw({ ...clear, wallAt: 0 }, 60, 32);
    const before = measure(hidden);
    const after = measure(hidden, learned);
    // One in ten may be refused, the limit of the validation's half-hidden class.
    expect(after.refused.length).toBeLessThanOrEqual(6);
    expect(after.rms[0]).toBeLessThan(0.6 * before.rms[0]);
    expect(after.rms[0]).toBeLessThan(0.1);
    // What all frames share moves no speed; what changes as the ball comes out would.
    const whole = run({ ...clear, ball: learned }, 40, 35);
    expect(Math.abs(after.bias[0] - whole.bias[0])).toBeLessThan(0.03);
    expect(Math.abs(after.bias[1] - whole.bias[1])).toBeLessThan(0.03);
  });

  test('too few such frames leave the model as it was', () => {
    const { measured } = run(clear, 3, 33);
    expect(learnBall(told, measured)).toBe(told);
    const hidden = run({ ...clear, wallAt: 0 }, 6, 34).measured;
    expect(learnBall(told, hidden)).toBe(told);
  });
});

describe('a radius at odds with what is stated', () => {
  const disc: Kind = { radius: 14, noise: 4, scene: { optics: 0.6 } };
  const still: BallModel = { ...told, blur: [0, 0] };
  const { measured } = run(disc, 12, 37);
  const unmodelled = (radius: number) =>
    learnBall({ ...still, radius, radiusU: 0.2 }, measured).look?.unmodelled ?? [0, 0];

  test('says that part of the outline may not be the ball’s, and how far the centre may be off', () => {
    const [x, y] = unmodelled(13.3);
    // Half of 0.7 px.
    expect(Math.sqrt(x)).toBeCloseTo(0.35, 1);
    expect(Math.sqrt(y)).toBeCloseTo(0.35, 1);
  });

  test('says nothing within two and a half standard uncertainties', () => {
    for (const of of unmodelled(13.6)) expect(Math.sqrt(of)).toBeLessThan(0.02);
  });
});
