import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { withoutEval } from '../../../scripts/noEval';

const LIBRARY = 'node_modules/@techstark/opencv-js/dist/opencv.js';

/** Constructors, methods, class functions, values and strings across the border, overloads, errors, and memory given back. */
const WORK = `
const cv = require(process.argv[2]);
cv.then(() => {
  const image = new cv.Mat(4, 6, cv.CV_8UC1);
  image.data.set([255,255,0,0,0,0, 255,255,0,0,0,0, 0,0,0,0,255,0, 0,0,0,0,255,0]);
  const [labels, stats, centroids] = [new cv.Mat(), new cv.Mat(), new cv.Mat()];
  const count = cv.connectedComponentsWithStats(image, labels, stats, centroids, 8, cv.CV_32S);
  const part = image.roi(new cv.Rect(0, 0, 2, 2));
  const list = new cv.MatVector();
  list.push_back(part);
  const zeros = cv.Mat.zeros(2, 3, cv.CV_32FC1);
  const circle = cv.minEnclosingCircle(cv.matFromArray(3, 1, cv.CV_32FC2, [0, 0, 4, 0, 2, 2]));
  const faults = [() => list.get(), () => cv.countNonZero(), () => cv.countNonZero('text')].map((call) => {
    try { call(); return 'none'; } catch (error) { return String(error.message ?? error); }
  });
  const methods = [cv.Mat.name, list.size(), list.get(0).rows, zeros.rows, zeros.size().width, image.isContinuous()];
  console.log(JSON.stringify([count, [...stats.data32S], [...centroids.data64F], circle, methods, faults]));
});
`;

describe('OpenCV without code made from text', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'opencv-'));
    writeFileSync(join(folder, 'work.cjs'), WORK);
    writeFileSync(join(folder, 'changed.cjs'), withoutEval(readFileSync(LIBRARY, 'utf8')));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  const run = (library: string, ...options: string[]) =>
    spawnSync(process.execPath, [...options, join(folder, 'work.cjs'), library], {
      encoding: 'utf8',
    });
  const STRICT = '--disallow-code-generation-from-strings';

  it('answers as the library does where that is forbidden', () => {
    const original = run(join(process.cwd(), LIBRARY));
    const [count, , , , , faults] = JSON.parse(original.stdout);
    expect(count).toBe(3);
    expect(faults).not.toContain('none');
    expect(run(join(folder, 'changed.cjs'), STRICT).stdout).toBe(original.stdout);
    // The library itself cannot start there.
    expect(run(join(process.cwd(), LIBRARY), STRICT).stdout).toBe('');
  });

  it('refuses a library that is not as it knows it', () => {
    const source = readFileSync(LIBRARY, 'utf8');
    expect(() => withoutEval(source.replace('"rawFunction",body)', '"rawFunction",text)'))).toThrow(
      'calls by pointer',
    );
    expect(() => withoutEval(`${source}\nnew Function("return 1")();`)).toThrow('does not know');
  });
});
