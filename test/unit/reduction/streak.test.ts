import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, it } from 'vitest';
import { isAvailable } from '../../../src/core/estimate';
import { fitLinear } from '../../../src/fit/linear';
import { footageFile, nodePlatform } from '../../../src/footage/node';
import { openFootage } from '../../../src/footage/open';
import type { StreakLine } from '../../../src/image/types';
import { createMeasurer } from '../../../src/reduction/measurer';
import { reduceShot } from '../../../src/reduction/reduceShot';
import { parseShot } from '../../../src/shot/parse';
import type { Position, Result } from '../../../src/shot/result';

const FOLDER = 'sample-clips/a-clean';
const RATE = 12_000;
/** Rows before anything moves: they show the still scene. */
const QUIET = 40;

/** What the streak image of the clean sample shows, read off its rows alone. */
describe('the streak image of sample a', () => {
  let line: StreakLine;
  let result: Result;
  /** Grey above the still scene, row by row; sample j lies `line.from + j` px from the muzzle. */
  let rows: Float32Array[];
  let noise: number;

  beforeAll(async () => {
    const shot = parseShot(await readFile(`${FOLDER}/a-clean.shot.json`, 'utf8'));
    if (!shot.ok) throw new Error(shot.reason.message);
    const source = await openFootage([await footageFile(`${FOLDER}/clip.mp4`)], nodePlatform);
    const grey: Float32Array[] = [];
    try {
      const inputs = {
        shot: shot.value,
        info: source.info,
        timestamps: null,
        footageSha256: null,
        audio: null,
      };
      const going = { aborted: false, throwIfAborted: () => undefined };
      const reduction = await reduceShot(
        inputs,
        source,
        createMeasurer(),
        (event) => {
          if (event.kind === 'streakLine') line = event.line;
          if (event.kind === 'streakRow') grey[event.frame] = event.row;
        },
        going,
      );
      result = reduction.result;
    } finally {
      await source.close();
    }
    const still = Float32Array.from({ length: line.length }, (_, j) => {
      const values = grey.slice(0, QUIET).map((row) => row[j] as number);
      return values.sort((a, b) => a - b)[QUIET >> 1] as number;
    });
    rows = grey.map((row) => row.map((value, j) => value - (still[j] as number)));
    const quiet = rows.slice(0, QUIET).flatMap((row) => [...row]);
    noise = Math.sqrt(quiet.reduce((sum, v) => sum + v * v, 0) / quiet.length);
  });

  const used = (): Position[] => result.positions.filter((position) => position.used);
  const ballLength = () => 0.03 / result.scale.value;

  /** Middle of the band as long as the ball, between its half-level flanks, px from the muzzle; null: no such band. */
  function bandMiddle(row: Float32Array): number | null {
    const level = Math.max(...row) / 2;
    let best: { from: number; to: number } | null = null;
    let from = 0;
    for (let j = 1; j <= row.length; j++) {
      const above = j < row.length && (row[j] as number) > level;
      const wasAbove = (row[j - 1] as number) > level;
      if (above && !wasAbove) from = crossing(row, j - 1, level);
      if (!above && wasAbove && j < row.length) {
        const to = crossing(row, j - 1, level);
        if (best === null || to - from > best.to - best.from) best = { from, to };
      }
    }
    if (best === null || best.to - best.from < 0.6 * ballLength()) return null;
    return line.from + (best.from + best.to) / 2;
  }
  const crossing = (row: Float32Array, j: number, level: number) =>
    j + (level - (row[j] as number)) / ((row[j + 1] as number) - (row[j] as number));

  it('shows the ball as a slanted band whose slope is the speed of the fit', () => {
    const whole = used().filter((position) => position.visible > 0.95);
    const seen = whole.flatMap(({ frame }) => {
      const middle = bandMiddle(rows[frame] as Float32Array);
      return middle === null ? [] : [{ frame, middle }];
    });
    expect(seen.length).toBeGreaterThan(0.8 * whole.length);
    const fit = fitLinear(
      Float64Array.from([...seen.map(() => 1), ...seen.map(({ frame }) => frame)]),
      Float64Array.from(seen, ({ middle }) => middle),
      new Float64Array(seen.length).fill(1),
    );
    const slope = fit.parameters[1] as number;
    const first = whole.find(({ frame }) => frame === seen[0]?.frame) as Position;
    const last = whole.find(({ frame }) => frame === seen.at(-1)?.frame) as Position;
    const meanSpeed = ((last.s as number) - (first.s as number)) / (last.time - first.time);
    expect(slope * RATE * result.scale.value).toBeGreaterThan(0.995 * meanSpeed);
    expect(slope * RATE * result.scale.value).toBeLessThan(1.005 * meanSpeed);
    // And each band lies on the centre that was measured.
    for (const { frame, middle } of seen) {
      const position = whole.find((one) => one.frame === frame) as Position;
      expect(Math.abs(middle - (position.s as number) / result.scale.value)).toBeLessThan(6);
    }
  });

  it('shows the bulge growing at the muzzle until the burst, and nothing there before it', () => {
    if (!isAvailable(result.sealBurst)) throw new Error('no burst');
    const [whole] = result.sealBurst.between;
    const outside = (frame: number) =>
      (rows[frame] as Float32Array).slice(-line.from + 2, -line.from + 40);
    const bright = (frame: number) => outside(frame).filter((v) => v > 6 * noise).length;
    expect(bright(QUIET + 5)).toBe(0);
    expect(bright(whole)).toBeGreaterThan(8);
    expect(bright(whole)).toBeGreaterThan(bright(whole - 5));
  });

  it('holds no pixel for faulty: its camera has none, only a codec and a seal that tears', () => {
    expect(result.warnings.map(({ code }) => code)).not.toContain('faultyPixels');
  });

  it('shows fragments that outrun the ball', () => {
    if (!isAvailable(result.sealBurst)) throw new Error('no burst');
    const [, open] = result.sealBurst.between;
    const foremost = (frame: number) =>
      line.from + (rows[frame] as Float32Array).findLastIndex((v) => v > 8 * noise);
    const perFrame = (foremost(open + 3) - foremost(open + 1)) / 2;
    const speed = isAvailable(result.exitVelocity) ? result.exitVelocity.value : NaN;
    expect(perFrame * RATE * result.scale.value).toBeGreaterThan(1.1 * speed);
  });
});
