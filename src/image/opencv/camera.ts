import type { ImagePoint } from '../../core/units';
import { cv, type Mat, type MatVector, withMats } from './library';

/** A flat target's points, in any unit on it (z = 0), and where one picture shows them. */
export interface TargetView {
  readonly target: readonly ImagePoint[];
  readonly image: readonly ImagePoint[];
}

/** A pinhole camera with two terms of radial distortion, fitted to views of a flat target. */
export interface FittedCamera {
  readonly focal: number;
  readonly centre: ImagePoint;
  readonly k1: number;
  readonly k2: number;
  /** Standard deviations as the library states them, same order. */
  readonly deviations: {
    readonly focal: number;
    readonly centre: ImagePoint;
    readonly k1: number;
    readonly k2: number;
  };
  /** Root-mean-square distance of image points, over all and of each view, px. */
  readonly rms: number;
  readonly viewRms: readonly number[];
  /** Rotation vector and translation of each view. */
  readonly poses: readonly {
    readonly rotation: readonly [number, number, number];
    readonly translation: readonly [number, number, number];
  }[];
}

function withMatVectors<T>(work: (vectors: readonly MatVector[]) => T): T {
  const vectors = Array.from({ length: 4 }, () => new cv.MatVector());
  try {
    return work(vectors);
  } finally {
    for (const vector of vectors) vector.delete();
  }
}

/** See `Vision`. */
export function fitCamera(
  views: readonly TargetView[],
  width: number,
  height: number,
): FittedCamera {
  const push = (vector: MatVector, type: number, values: number[], rows: number): void => {
    const mat = new cv.Mat(rows, 1, type);
    try {
      mat.data32F.set(values);
      vector.push_back(mat);
    } finally {
      mat.delete();
    }
  };
  return withMatVectors((vectors) =>
    withMats(5, (mats) => {
      const [objects, images, rotations, translations] = vectors as [
        MatVector,
        MatVector,
        MatVector,
        MatVector,
      ];
      const [matrix, distortion, deviations, poseDeviations, viewErrors] = mats as [
        Mat,
        Mat,
        Mat,
        Mat,
        Mat,
      ];
      for (const { target, image } of views) {
        push(
          objects,
          cv.CV_32FC3,
          target.flatMap(([x, y]) => [x, y, 0]),
          target.length,
        );
        push(images, cv.CV_32FC2, image.flat(), image.length);
      }
      const rms = cv.calibrateCameraExtended(
        objects,
        images,
        { width, height },
        matrix,
        distortion,
        rotations,
        translations,
        deviations,
        poseDeviations,
        viewErrors,
        cv.CALIB_FIX_ASPECT_RATIO | cv.CALIB_ZERO_TANGENT_DIST | cv.CALIB_FIX_K3,
        new cv.TermCriteria(cv.TermCriteria_COUNT + cv.TermCriteria_EPS, 100, 1e-12),
      );
      // Copies: reading a vector's Mat makes a new handle.
      const vectorOf = (from: MatVector, i: number): [number, number, number] => {
        const mat = from.get(i);
        try {
          const [x = 0, y = 0, z = 0] = mat.data64F;
          return [x, y, z];
        } finally {
          mat.delete();
        }
      };
      const [fx = 0, , cx = 0, , , cy = 0] = matrix.data64F;
      const [k1 = 0, k2 = 0] = distortion.data64F;
      // fx, fy, cx, cy, k1, k2, ...
      const [, focalU = 0, cxU = 0, cyU = 0, k1U = 0, k2U = 0] = deviations.data64F;
      return {
        focal: fx,
        centre: [cx, cy],
        k1,
        k2,
        deviations: { focal: focalU, centre: [cxU, cyU], k1: k1U, k2: k2U },
        rms,
        viewRms: [...viewErrors.data64F],
        poses: views.map((_, i) => ({
          rotation: vectorOf(rotations, i),
          translation: vectorOf(translations, i),
        })),
      };
    }),
  );
}
