import library from '@techstark/opencv-js';
import { ExitframeError } from '../../core/reason';
import { visionFailed } from './failures';

/** The part of the library's interface used here; its own type files need a page's types. */
export interface Mat {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32S: Int32Array;
  readonly data32F: Float32Array;
  readonly data64F: Float64Array;
  delete(): void;
}
export interface MatVector {
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
  onAbort?: (why: unknown) => void;
  exceptionFromPtr(thrown: number): { readonly msg: string };
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

export const cv = library as unknown as OpenCv;

/** What the library throws is the number of an error of its own, or a text. */
function calling<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (typeof error === 'number') throw visionFailed(cv.exceptionFromPtr(error).msg.trim());
    if (error instanceof Error) throw error;
    throw visionFailed(String(error));
  }
}

/** Runs `work` with new Mats and frees them whatever happens: they live outside the garbage collector. */
export function withMats<T>(count: number, work: (mats: readonly Mat[]) => T): T {
  const mats: Mat[] = [];
  return calling(() => {
    try {
      while (mats.length < count) mats.push(new cv.Mat());
      return work(mats);
    } finally {
      for (const mat of mats) mat.delete();
    }
  });
}

/** Runs `work` with a copy of the picture as a Mat of that type, and frees it. */
export function withImage<T>(
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
  return calling(() => {
    const mat = new cv.Mat(image.height, image.width, type);
    try {
      if (image.data instanceof Uint8Array) mat.data.set(image.data);
      else mat.data32F.set(image.data);
      return work(mat);
    } finally {
      mat.delete();
    }
  });
}

/** Waited for from the first moment: the library tells but once that it could not start. */
const started = new Promise<void>((resolve, reject) => {
  cv.onAbort = reject;
  // The module object is itself a thenable that resolves to itself: awaiting it would never end, so
  // it is only ever asked for its callback and never passed through a promise.
  cv.then(() => resolve());
});
started.catch(() => {}); // told to whoever asks whether it is ready

/** Resolves once the library can be called (about a second after it was imported). Rejects with why it could not start. */
export const libraryReady = (): Promise<void> => started;
