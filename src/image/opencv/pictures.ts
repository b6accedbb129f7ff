import { ExitframeError } from '../../core/reason';
import { cv, type Mat, withImage, withMats } from './library';

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

/** See `Vision`. */
export function components(data: Uint8Array, width: number, height: number): Component[] {
  if (data.length === 0) return [];
  return withImage(cv.CV_8UC1, { data, width, height }, (image) =>
    withMats(3, (mats) => {
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

/** See `Vision`. */
export function correlate(image: Plane, template: Plane): Plane {
  if (template.width > image.width || template.height > image.height) {
    throw new ExitframeError(
      'templateTooLarge',
      `A template of ${template.width} x ${template.height} px does not fit into ${image.width} x ${image.height} px.`,
      'Search a larger region.',
    );
  }
  return withImage(cv.CV_32FC1, image, (imageMat) =>
    withImage(cv.CV_32FC1, template, (templateMat) =>
      withMats(1, (mats) => {
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
