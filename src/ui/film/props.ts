import type { Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { PlaneCorners } from '../../app/draft';
import type { MarkedEdge } from '../../app/resultTypes';
import type { GreyFrame } from '../../core/frame';
import type { ImagePoint, ImageRect, ImageVector } from '../../core/units';
import type { Reference } from './picture';
import type { FilmTransform } from './view';

/** What a pointer does on the film. `inspect`: pan, zoom, read grey values, pick a centre. */
export type FilmMode =
  | { readonly kind: 'inspect' }
  /** Two ends by click and drag; a drag away from the handles draws the length anew. */
  | { readonly kind: 'length'; readonly index: number }
  /** Two ends of an edge that is straight in the scene. */
  | { readonly kind: 'edge'; readonly index: number }
  /** The four corners of a rectangle; a press takes the nearest along. */
  | { readonly kind: 'plane' }
  /** A point on the muzzle plane, and the arrow's tip for the direction of travel. */
  | { readonly kind: 'muzzle' }
  /** The ball's centre in the frame shown. */
  | { readonly kind: 'point' }
  /** Where the ball is in the frame shown, for the search to start from. */
  | { readonly kind: 'seed' }
  | { readonly kind: 'region'; readonly which: FilmRegion };

export type FilmRegion = 'flight' | 'seal';

export interface FilmLength {
  readonly from: ImagePoint;
  readonly to: ImagePoint;
  /** Stands beside it: '200.00 mm'. */
  readonly label: string;
}

/** The marked rectangle's corners in their order, as seen in the picture. */
export const PLANE_CORNERS = ['topLeft', 'topRight', 'bottomRight', 'bottomLeft'] as const;
export type Corner = (typeof PLANE_CORNERS)[number];

export interface FilmPlane {
  readonly corners: PlaneCorners;
}

export interface FilmMuzzle {
  readonly point: ImagePoint;
  /** Direction of travel as given by hand or, `axisFitted`, from the path; null: not known yet. */
  readonly axis: ImageVector | null;
  readonly axisFitted: boolean;
}

/** A measured centre; a result's `Position` can be given as it is. */
export interface FilmPosition {
  readonly frame: number;
  readonly x: number | null;
  readonly y: number | null;
  /** Standard uncertainties, px, and covariance, px^2. */
  readonly ux: number | null;
  readonly uy: number | null;
  readonly cov: number | null;
  readonly used: boolean;
  readonly manual: boolean;
}

export interface FilmSeed {
  readonly frame: number;
  readonly at: ImagePoint;
}

export interface FilmOverlays {
  readonly lengths: readonly FilmLength[];
  readonly edges: readonly MarkedEdge[];
  readonly plane: FilmPlane | null;
  /** Lines that are straight and evenly spaced on the flight plane, as the film shows them; null: not drawn. */
  readonly grid: readonly (readonly ImagePoint[])[] | null;
  readonly muzzle: FilmMuzzle | null;
  readonly flightRegion: ImageRect | null;
  readonly sealRegion: ImageRect | null;
  readonly positions: readonly FilmPosition[];
  /** Where a person said the ball is. */
  readonly seeds: readonly FilmSeed[];
  /** The fitted path in the image, in order of travel. */
  readonly path: readonly ImagePoint[] | null;
  /** The ball's outline radius, drawn at the current frame's centre; px, null: not drawn. */
  readonly ballRadius: number | null;
}

/** A pixel under the pointer: whole coordinates and the footage's own grey value. */
export interface PixelReading {
  readonly x: number;
  readonly y: number;
  readonly grey: number;
  /** What it differs by from what is held against the image; null: nothing is. */
  readonly change: number | null;
}

/**
 * Geometry callbacks report a change; `settled` is false while a handle is being dragged and true once,
 * at the end of a drag and on every keyboard nudge: that is the moment to remember an undo step.
 * The view draws unsettled geometry itself, so a caller may ignore it.
 */
export interface FilmViewProps {
  /** The image to show; null while none has arrived: the film area then shows `placeholder`. */
  readonly frame: GreyFrame | null;
  /** Size of the footage, so that the layout stands before the first frame. */
  readonly imageWidth: number;
  readonly imageHeight: number;
  /** Frame whose marks are drawn as current (may run ahead of `frame` while decoding). */
  readonly currentFrame: number;
  /** What is held against the image: its difference is shown, and told of the pixel pointed at. */
  readonly against?: Reference | null;
  /** Changes so large are shown as black and white, where something is held against the image. */
  readonly changeReach?: number;
  /** A second frame shown beside it. */
  readonly held?: GreyFrame | null;
  /** Whether what is pointed at is enlarged. */
  readonly magnified?: boolean;
  /** Controls above the film, beside the key and the zoom. */
  readonly tools?: ComponentChildren;
  /** Grey values shown as black and as white; null: 0 and the format's largest. */
  readonly contrast: { readonly low: number; readonly high: number } | null;
  /** Shared with the streak image below. Start with `FIT`; set to `FIT` to show the whole frame. */
  readonly view: Signal<FilmTransform>;
  /** The film fills the width; its height stays below this share of the window's height (default 0.6). */
  readonly largestHeightShare?: number;
  readonly overlays: FilmOverlays;
  /** The current frame's covariance ellipse (1 standard uncertainty) is drawn this many times as large; stated on screen. */
  readonly ellipseFactor: number;
  readonly mode: FilmMode;
  /** One sentence for screen readers: what the film shows now. */
  readonly description: string;
  readonly placeholder?: string;

  onLengthChange?(index: number, from: ImagePoint, to: ImagePoint, settled: boolean): void;
  onEdgeChange?(index: number, from: ImagePoint, to: ImagePoint, settled: boolean): void;
  /** `corner`: 0 to 3, in the order of `PLANE_CORNERS`. */
  onPlaneChange?(corner: number, at: ImagePoint, settled: boolean): void;
  /** `axis` is a unit vector; null: still to be fitted. */
  onMuzzleChange?(point: ImagePoint, axis: ImageVector | null, settled: boolean): void;
  onSeedChange?(frame: number, at: ImagePoint, settled: boolean): void;
  onPointChange?(frame: number, at: ImagePoint, settled: boolean): void;
  /** Whole pixels, inside the image. */
  onRegionChange?(which: FilmRegion, region: ImageRect, settled: boolean): void;
  /** The frame held beside is to be the one shown, and this one held. */
  onSwap?(): void;
  /** Pixel under the pointer; null: the pointer left the image. */
  onPixel?(reading: PixelReading | null): void;
  /** A measured centre was clicked. */
  onPickFrame?(frame: number): void;
  /** Left and right arrow (Page Up and Down: ten) with the film focused. */
  onStep?(frames: number): void;
}
