import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import library from '@techstark/opencv-js';
import { beforeAll, describe, expect, it } from 'vitest';
import type { GreyFrame } from '../../src/core/frame';
import { footageFile, nodePlatform } from '../../src/footage/node';
import { openFootage } from '../../src/footage/open';
import { homographyOf, through } from '../../src/geometry/homography';
import type { TargetView } from '../../src/image/opencv/camera';
import { loadVision } from '../../src/image/opencv/vision';
import { type BoardCalibration, calibrateLensFromBoards } from '../../src/reduction/calibrateLens';

/**
 * OpenCV's sample pictures of a chessboard and the calibration published with them: see data/chessboard/SOURCE.md.
 * Published with five distortion terms: focal 535.916, centre (342.283, 235.571), average reprojection error 0.3926 px.
 */
const FOLDER = 'test/outside/data/chessboard';
const PUBLISHED = { rms: 0.39259, focal: 535.916, centre: [342.283, 235.571] } as const;

/** What the library offers beyond the program's use of it. */
interface Mat {
  data64F: Float64Array;
  data32F: Float32Array;
  delete(): void;
}
interface Vectors {
  push_back(mat: Mat): void;
  delete(): void;
}
const cv = library as unknown as {
  Mat: new (rows?: number, cols?: number, type?: number) => Mat;
  MatVector: new () => Vectors;
  CV_32FC2: number;
  CV_32FC3: number;
  CALIB_FIX_ASPECT_RATIO: number;
  TermCriteria: new (type: number, count: number, epsilon: number) => unknown;
  findHomography(from: Mat, to: Mat): Mat;
  calibrateCameraExtended(...args: unknown[]): number;
};

async function* pictures(): AsyncGenerator<GreyFrame> {
  const names = (await readdir(FOLDER)).filter((name) => name.endsWith('.jpg')).sort();
  const files = await Promise.all(names.map((name) => footageFile(join(FOLDER, name))));
  const film = await openFootage(files, nodePlatform);
  yield* film.frames({ start: 0, end: film.info.frameCount });
}

let found: BoardCalibration;
let vision: Awaited<ReturnType<typeof loadVision>>;
beforeAll(async () => {
  vision = await loadVision();
  found = await calibrateLensFromBoards(pictures(), null, vision);
}, 60_000);

const lens = () => {
  if (!found.lens.ok) throw new Error(found.lens.reason.message);
  return found.lens.value;
};

describe("the lens from OpenCV's chessboard pictures", () => {
  it('finds the board of 9 x 6 inner corners in all thirteen, untold', () => {
    expect(found.refused).toEqual([]);
    for (const { columns, rows, corners } of found.boards) {
      expect([columns, rows].sort()).toEqual([6, 9]);
      expect(corners.length).toBeGreaterThanOrEqual(53);
    }
    const all = found.boards.reduce((sum, { corners }) => sum + corners.length, 0);
    expect(all).toBeGreaterThan(0.99 * 13 * 54);
  });

  it('fits the corners no worse than the published calibration', () => {
    // Like with like: every corner counted, as there; ours leaves out strays after that.
    const { rms } = vision.fitCamera(targets(), 640, 480);
    expect(rms).toBeLessThan(PUBLISHED.rms);
    expect(rms).toBeGreaterThan(0.5 * PUBLISHED.rms);
    expect(lens().rms).toBeLessThanOrEqual(rms);
  });

  it('agrees with it: focal length to 0.5 %, centre to 3 px', () => {
    // Ours has two terms without the tangential ones, which trade with the centre: hence pixels, not tenths.
    expect(Math.abs(lens().focal.value / PUBLISHED.focal - 1)).toBeLessThan(0.005);
    expect(Math.abs(lens().focal.value - PUBLISHED.focal)).toBeLessThan(3 * lens().focal.u);
    expect(Math.abs(lens().centre[0] - PUBLISHED.centre[0])).toBeLessThan(3);
    expect(Math.abs(lens().centre[1] - PUBLISHED.centre[1])).toBeLessThan(3);
  });

  it('bends points as the published five terms do, over the part of the picture that the boards cover', async () => {
    const text = await readFile(join(FOLDER, 'left_intrinsics.yml'), 'utf8');
    const numbers = /distortion_coefficients[^[]*\[([^\]]*)\]/
      .exec(text)?.[1]
      ?.split(',')
      .map(Number);
    const [k1 = 0, k2 = 0, , , k3 = 0] = numbers ?? [];
    const ours = lens();
    for (const radius of [100, 150, 200, 250]) {
      const r2 = (radius / PUBLISHED.focal) ** 2;
      const theirs = radius * r2 * (k1 + r2 * (k2 + r2 * k3));
      const q2 = (radius / ours.focal.value) ** 2;
      const mine = radius * q2 * (ours.k1.value + q2 * ours.k2.value);
      expect(Math.abs(mine - theirs)).toBeLessThan(0.4);
    }
  });

  it('agrees with the library run with all five terms on the same corners', () => {
    const views = targets();
    const [objects, images, rotations, translations] = Array.from(
      { length: 4 },
      () => new cv.MatVector(),
    ) as [Vectors, Vectors, Vectors, Vectors];
    for (const { target, image } of views) {
      const object = new cv.Mat(target.length, 1, cv.CV_32FC3);
      object.data32F.set(target.flatMap(([x, y]) => [x, y, 0]));
      objects.push_back(object);
      const seen = new cv.Mat(image.length, 1, cv.CV_32FC2);
      seen.data32F.set(image.flat());
      images.push_back(seen);
    }
    const [matrix, distortion, a, b, c] = Array.from({ length: 5 }, () => new cv.Mat()) as [
      Mat,
      Mat,
      Mat,
      Mat,
      Mat,
    ];
    const rms = cv.calibrateCameraExtended(
      objects,
      images,
      { width: 640, height: 480 },
      matrix,
      distortion,
      rotations,
      translations,
      a,
      b,
      c,
      cv.CALIB_FIX_ASPECT_RATIO,
      new cv.TermCriteria(3, 100, 1e-12),
    );
    // Three more terms may fit better, but not by much, or two would not describe the lens.
    const two = vision.fitCamera(views, 640, 480).rms;
    expect(rms).toBeLessThanOrEqual(two + 1e-6);
    expect(two / rms).toBeLessThan(1.1);
    expect(Math.abs((matrix.data64F[0] as number) / lens().focal.value - 1)).toBeLessThan(0.005);
  });

  it('states uncertainties like those the library derives from all corners, or larger', () => {
    const camera = vision.fitCamera(targets(), 640, 480);
    expect(lens().k1.u).toBeGreaterThanOrEqual(0.8 * camera.deviations.k1);
    expect(lens().k2.u).toBeGreaterThanOrEqual(0.8 * camera.deviations.k2);
    expect(lens().focal.u).toBeGreaterThanOrEqual(0.8 * camera.deviations.focal);
    expect(lens().k1.u).toBeLessThan(5 * camera.deviations.k1);
    // Both terms bend the same way farther out, so what one gains the other loses.
    expect(lens().correlation).toBeLessThan(-0.8);
  });
});

const targets = (): TargetView[] =>
  found.boards.map(({ corners }) => ({
    target: corners.map(({ column, row }) => [column, row] as const),
    image: corners.map(({ at }) => at),
  }));

it("takes four corners to four others as OpenCV's findHomography does", () => {
  const from = [
    [0, 0],
    [0.4, 0],
    [0.4, 0.1],
    [0, 0.1],
  ] as const;
  const to = [
    [103.2, 41.7],
    [911.4, 66.1],
    [880.9, 231.3],
    [97.6, 252.8],
  ] as const;
  const mat = (points: readonly (readonly [number, number])[]) => {
    const out = new cv.Mat(4, 1, cv.CV_32FC2);
    out.data32F.set(points.flat());
    return out;
  };
  const theirs = cv.findHomography(mat(from), mat(to)).data64F;
  const ours = homographyOf(from, to);
  for (const [x, y] of [
    [0.1, 0.05],
    [0.35, 0.02],
    [0.6, 0.2],
  ] as const) {
    const [u, v] = through(ours, [x, y]);
    const [h0, h1, h2, h3, h4, h5, h6, h7, h8] = theirs as unknown as number[] as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const w = h6 * x + h7 * y + h8;
    // The library takes its points as 32-bit numbers.
    expect(u).toBeCloseTo((h0 * x + h1 * y + h2) / w, 3);
    expect(v).toBeCloseTo((h3 * x + h4 * y + h5) / w, 3);
  }
});
