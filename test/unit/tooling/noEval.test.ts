import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { withoutEval, withWasmApart } from '../../../scripts/noEval';

const LIBRARY = 'node_modules/@techstark/opencv-js/dist/opencv.js';

/** Constructors, methods, class functions, values and strings across the border, overloads, errors, and memory given back. */
const WORK = `
import(process.argv[2]).then(({ default: cv }) => {
cv.onAbort = (why) => console.log('not started: ' + why.name);
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
});
`;

/** What the library looks for where it runs in Node, and a module does not have. */
const IN_NODE = `import { createRequire } from 'node:module';
const require = createRequire(import.meta.url);
const __dirname = '.';
`;

describe('OpenCV without code made from text', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'opencv-'));
    writeFileSync(join(folder, 'work.cjs'), WORK);
    const changed = withoutEval(readFileSync(LIBRARY, 'utf8'));
    writeFileSync(join(folder, 'changed.cjs'), changed);
    const apart = (name: string, put: (wasm: Buffer) => string) =>
      writeFileSync(
        join(folder, name),
        IN_NODE + withWasmApart(changed, (wasm) => JSON.stringify(put(wasm))),
      );
    const addressOf = (type: string) => (wasm: Buffer) =>
      `data:${type};base64,${wasm.toString('base64')}`;
    apart('streamed.mjs', addressOf('application/wasm'));
    apart('loaded.mjs', addressOf('application/octet-stream'));
    apart('missing.mjs', () => 'data:');
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
    expect(run(join(process.cwd(), LIBRARY), STRICT).stdout).toContain('EvalError');
  });

  it('answers likewise with its WebAssembly in a file of its own, and tells where that does not come', () => {
    const { stdout } = run(join(process.cwd(), LIBRARY));
    expect(run(join(folder, 'streamed.mjs'), STRICT).stdout).toBe(stdout);
    expect(run(join(folder, 'loaded.mjs'), STRICT).stdout).toBe(stdout);
    expect(run(join(folder, 'missing.mjs'), STRICT).stdout).toContain('not started: TypeError');
  });

  it('refuses a library that is not as it knows it', () => {
    const source = readFileSync(LIBRARY, 'utf8');
    expect(() => withoutEval(source.replace('"rawFunction",body)', '"rawFunction",text)'))).toThrow(
      'calls by pointer',
    );
    expect(() => withWasmApart(source.replace('instantiateAsync', 'begin'), () => '')).toThrow(
      'WebAssembly',
    );
    expect(() => withoutEval(`${source}\nnew Function("return 1")();`)).toThrow('does not know');
  });
});
