import library from '@techstark/opencv-js';
import { ExitframeError } from '../core/reason';
import type { ImagePoint } from '../core/units';

/** One connected piece of a mask: area in pixels, bounding box, centroid. */
export interface Component {
  readonly area: number;
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
  readonly cx: number;
  readonly cy: number;
}

/** A single-channel picture of 32-bit floats, row by row. */
export interface Plane {
  readonly data: Float32Array;
  readonly width: number;
  readonly height: number;
}

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

/** The operations of OpenCV that the measuring core uses, free of its own types. */
export interface Vision {
  /** Pieces of the non-zero pixels of `mask`, 8-connected, in reading order of their first pixel. */
  components(mask: Uint8Array, width: number, height: number): Component[];
  /**
   * Correlation coefficient (-1..1) of `template` with every place it fits into `image` whole:
   * `(image.width - template.width + 1) x (image.height - template.height + 1)`, row by row; 0 where
   * the image is flat.
   */
  correlate(image: Plane, template: Plane): Plane;
  /** One focal length for both directions, no tangential distortion, no third radial term. */
  fitCamera(views: readonly TargetView[], width: number, height: number): FittedCamera;
}

/** The part of the library's interface used here; its own type files need a page's types. */
interface Mat {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32S: Int32Array;
  readonly data32F: Float32Array;
  readonly data64F: Float64Array;
  delete(): void;
}
interface MatVector {
  push_back(mat: Mat): void;
  get(index: number): Mat;
  size(): number;
  delete(): void;
}
interface OpenCv {
  readonly MatVector: new () => MatVector;
  readonly TermCriteria: new (type: number, count: number, epsilon: number) => unknown;
  readonly TermCriteria_COUNT: number;
  readonly TermCriteria_EPS: number;
  readonly CV_32FC2: number;
  readonly CV_32FC3: number;
  readonly CALIB_FIX_ASPECT_RATIO: number;
  readonly CALIB_ZERO_TANGENT_DIST: number;
  readonly CALIB_FIX_K3: number;
  calibrateCameraExtended(
    objectPoints: MatVector,
    imagePoints: MatVector,
    imageSize: { readonly width: number; readonly height: number },
    cameraMatrix: Mat,
    distortion: Mat,
    rotations: MatVector,
    translations: MatVector,
    intrinsicDeviations: Mat,
    poseDeviations: Mat,
    viewErrors: Mat,
    flags: number,
    criteria: unknown,
  ): number;
  readonly then: (ready: () => void) => unknown;
  readonly Mat: new (rows?: number, cols?: number, type?: number) => Mat;
  readonly CV_8UC1: number;
  readonly CV_32FC1: number;
  readonly CV_32S: number;
  readonly CC_STAT_LEFT: number;
  readonly CC_STAT_TOP: number;
  readonly CC_STAT_WIDTH: number;
  readonly CC_STAT_HEIGHT: number;
  readonly CC_STAT_AREA: number;
  readonly TM_CCOEFF_NORMED: number;
  connectedComponentsWithStats(
    image: Mat,
    labels: Mat,
    stats: Mat,
    centroids: Mat,
    connectivity: number,
    labelType: number,
  ): number;
  matchTemplate(image: Mat, template: Mat, result: Mat, method: number): void;
}

/** Runs `work` with new Mats and frees them whatever happens: they live outside the garbage collector. */
function withMats<T>(cv: OpenCv, count: number, work: (mats: readonly Mat[]) => T): T {
  const mats = Array.from({ length: count }, () => new cv.Mat());
  try {
    return work(mats);
  } finally {
    for (const mat of mats) mat.delete();
  }
}

function withImage<T>(
  cv: OpenCv,
  type: number,
  image: { data: Uint8Array | Float32Array; width: number; height: number },
  work: (mat: Mat) => T,
): T {
  if (image.data.length !== image.width * image.height) {
    throw new ExitframeError(
      'sizeMismatch',
      `A picture of ${image.width} x ${image.height} px came with ${image.data.length} values.`,
      'Hand over one value a pixel.',
    );
  }
  const mat = new cv.Mat(image.height, image.width, type);
  try {
    if (image.data instanceof Uint8Array) mat.data.set(image.data);
    else mat.data32F.set(image.data);
    return work(mat);
  } finally {
    mat.delete();
  }
}

function components(cv: OpenCv, data: Uint8Array, width: number, height: number): Component[] {
  if (data.length === 0) return [];
  return withImage(cv, cv.CV_8UC1, { data, width, height }, (image) =>
    withMats(cv, 3, (mats) => {
      const [labels, stats, centroids] = mats as readonly [Mat, Mat, Mat];
      const count = cv.connectedComponentsWithStats(image, labels, stats, centroids, 8, cv.CV_32S);
      const pieces: Component[] = [];
      // Label 0 is everything outside the mask.
      for (let label = 1; label < count; label++) {
        const stat = (column: number) => stats.data32S[label * stats.cols + column] as number;
        pieces.push({
          area: stat(cv.CC_STAT_AREA),
          x: stat(cv.CC_STAT_LEFT),
          y: stat(cv.CC_STAT_TOP),
          w: stat(cv.CC_STAT_WIDTH),
          h: stat(cv.CC_STAT_HEIGHT),
          cx: centroids.data64F[2 * label] as number,
          cy: centroids.data64F[2 * label + 1] as number,
        });
      }
      return pieces;
    }),
  );
}

function correlate(cv: OpenCv, image: Plane, template: Plane): Plane {
  if (template.width > image.width || template.height > image.height) {
    throw new ExitframeError(
      'templateTooLarge',
      `A template of ${template.width} x ${template.height} px does not fit into ${image.width} x ${image.height} px.`,
      'Search a larger region.',
    );
  }
  return withImage(cv, cv.CV_32FC1, image, (imageMat) =>
    withImage(cv, cv.CV_32FC1, template, (templateMat) =>
      withMats(cv, 1, (mats) => {
        const [result] = mats as readonly [Mat];
        cv.matchTemplate(imageMat, templateMat, result, cv.TM_CCOEFF_NORMED);
        const data = result.data32F.slice();
        // The library divides rounding noise by rounding noise where the picture is flat.
        for (let i = 0; i < data.length; i++) {
          const value = data[i] as number;
          if (!(value >= -1.001 && value <= 1.001)) data[i] = 0;
        }
        return { data, width: result.cols, height: result.rows };
      }),
    ),
  );
}

function withMatVectors<T>(cv: OpenCv, work: (vectors: readonly MatVector[]) => T): T {
  const vectors = Array.from({ length: 4 }, () => new cv.MatVector());
  try {
    return work(vectors);
  } finally {
    for (const vector of vectors) vector.delete();
  }
}

function fitCamera(
  cv: OpenCv,
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
  return withMatVectors(cv, (vectors) =>
    withMats(cv, 5, (mats) => {
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

let loading: Promise<Vision> | null = null;

/** Starts the library once a thread (about a second) and keeps it. */
export function loadVision(): Promise<Vision> {
  // The module object is itself a thenable that resolves to itself: awaiting it would never end, so
  // it is only ever asked for its callback and never passed through a promise.
  const cv = library as unknown as OpenCv;
  loading ??= new Promise<void>((resolve) => {
    cv.then(() => resolve());
  }).then(() => ({
    components: (mask, width, height) => components(cv, mask, width, height),
    correlate: (image, template) => correlate(cv, image, template),
    fitCamera: (views, width, height) => fitCamera(cv, views, width, height),
  }));
  return loading;
}
