import type { ImagePoint, Pixels } from '../../core/units';

/**
 * How the film lies in its viewport: an image point (x, y) stands `(x - x0) * scale`, `(y - y0) * scale`
 * CSS pixels from the viewport's top-left corner. `fitted` views follow the viewport when it is resized.
 */
export interface FilmTransform {
  /** CSS pixels per image pixel; 0 before the first layout. */
  readonly scale: number;
  /** Image coordinates at the viewport's top-left corner. */
  readonly x0: Pixels;
  readonly y0: Pixels;
  readonly fitted: boolean;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The view to start from, and to set when the whole frame is to be shown again. */
export const FIT: FilmTransform = { scale: 0, x0: -0.5, y0: -0.5, fitted: true };

/** More than this shows nothing new of a pixel. */
const LARGEST_SCALE = 64;
/** Keep at least this share of the fitted size, so that the film cannot be lost. */
const SMALLEST_SHARE = 0.5;

/** Shows the whole image, centred (pixel centres are whole numbers, so the image begins at -0.5). */
export function fitView(image: Size, viewport: Size): FilmTransform {
  const scale = Math.min(viewport.width / image.width, viewport.height / image.height);
  return {
    scale,
    x0: -0.5 - (viewport.width / scale - image.width) / 2,
    y0: -0.5 - (viewport.height / scale - image.height) / 2,
    fitted: true,
  };
}

/** Image point to CSS pixels from the viewport's corner. */
export const toViewport = (view: FilmTransform, [x, y]: ImagePoint): readonly [number, number] => [
  (x - view.x0) * view.scale,
  (y - view.y0) * view.scale,
];

/** CSS pixels from the viewport's corner to an image point. */
export const toImage = (view: FilmTransform, left: number, top: number): ImagePoint => [
  view.x0 + left / view.scale,
  view.y0 + top / view.scale,
];

/** How a canvas that holds the image at native size lies in the viewport. */
export const pictureStyle = (view: FilmTransform) => ({
  transform: `scale(${view.scale}) translate(${-0.5 - view.x0}px, ${-0.5 - view.y0}px)`,
  imageRendering: view.scale > 1 ? 'pixelated' : 'auto',
});

/** Keeps some of the image in sight: its centre-ward edge never passes the viewport's middle. */
function keepInSight(view: FilmTransform, image: Size, viewport: Size): FilmTransform {
  const halfWidth = viewport.width / view.scale / 2;
  const halfHeight = viewport.height / view.scale / 2;
  const clamp = (value: number, low: number, high: number) => Math.min(Math.max(value, low), high);
  return {
    ...view,
    x0: clamp(view.x0, -0.5 - halfWidth, image.width - 0.5 - halfWidth),
    y0: clamp(view.y0, -0.5 - halfHeight, image.height - 0.5 - halfHeight),
  };
}

/** Zooms by `factor` about a place of the viewport, which keeps showing the same image point. */
export function zoomAbout(
  view: FilmTransform,
  factor: number,
  left: number,
  top: number,
  image: Size,
  viewport: Size,
): FilmTransform {
  const smallest = fitView(image, viewport).scale * SMALLEST_SHARE;
  const scale = Math.min(Math.max(view.scale * factor, smallest), LARGEST_SCALE);
  const [x, y] = toImage(view, left, top);
  return keepInSight(
    { scale, x0: x - left / scale, y0: y - top / scale, fitted: false },
    image,
    viewport,
  );
}

/** Moves the image by CSS pixels (positive: right and down). */
export const panBy = (
  view: FilmTransform,
  right: number,
  down: number,
  image: Size,
  viewport: Size,
): FilmTransform =>
  keepInSight(
    {
      scale: view.scale,
      x0: view.x0 - right / view.scale,
      y0: view.y0 - down / view.scale,
      fitted: false,
    },
    image,
    viewport,
  );

/** The same view where it shows an image point; else moved so that the point stands in the middle. */
export function revealPoint(
  view: FilmTransform,
  point: ImagePoint,
  image: Size,
  viewport: Size,
): FilmTransform {
  const [left, top] = toViewport(view, point);
  if (left >= 0 && top >= 0 && left <= viewport.width && top <= viewport.height) return view;
  return panBy(view, viewport.width / 2 - left, viewport.height / 2 - top, image, viewport);
}

/** Pixels so large, about a point, that numbers can be written into them. */
export function pixelView(
  point: ImagePoint,
  scale: number,
  image: Size,
  viewport: Size,
): FilmTransform {
  const [x, y] = point;
  return keepInSight(
    {
      scale: Math.min(scale, LARGEST_SCALE),
      x0: x - viewport.width / scale / 2,
      y0: y - viewport.height / scale / 2,
      fitted: false,
    },
    image,
    viewport,
  );
}

/** The view after the viewport changed from `before` to `after`: fitted stays fitted, else the middle stays. */
export function resizeView(
  view: FilmTransform,
  image: Size,
  before: Size,
  after: Size,
): FilmTransform {
  if (view.fitted || view.scale === 0) return fitView(image, after);
  return keepInSight(
    {
      ...view,
      x0: view.x0 + (before.width - after.width) / view.scale / 2,
      y0: view.y0 + (before.height - after.height) / view.scale / 2,
    },
    image,
    after,
  );
}
