import type { ReadonlySignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { ImagePoint, ImageVector } from '../../core/units';
import type { FilmTransform } from '../film/view';

/** The line the rows were read along; the core's `StreakLine` can be given as it is. */
export interface StreakGeometry {
  readonly origin: ImagePoint;
  /** Unit vector. */
  readonly axis: ImageVector;
  /** First sample, and number of samples 1 px apart, along the axis from `origin`. */
  readonly from: number;
  readonly length: number;
}

/**
 * Rows as they have come: `rows.get(frame)`, grey values with -1 where the line lies outside the image.
 * The map may be the same object filled further; `version` grows with every change so that only new rows
 * are painted. A replaced row must be announced with a new map.
 */
export interface StreakRows {
  readonly rows: ReadonlyMap<number, Float32Array>;
  readonly version: number;
}

/** A place in the streak image: frame (row centres are whole numbers) and px along the axis from `origin`. */
export interface StreakPlace {
  readonly frame: number;
  readonly along: number;
}

export interface StreakCentre extends StreakPlace {
  /** Standard uncertainty along the axis, px. */
  readonly u: number;
  readonly used: boolean;
  readonly manual: boolean;
}

/** Points of the fitted curve with the half width of its coverage band along the axis, px. */
export interface StreakCurvePoint extends StreakPlace {
  readonly halfWidth: number;
}

/** An instant with its coverage interval, all in frames (fractions count). */
export interface StreakInstant {
  readonly kind: 'burst' | 'exit' | 'onset' | 'contact';
  readonly frame: number;
  readonly low: number;
  readonly high: number;
  /** 'seal opens', 'ball centre leaves': kept short. */
  readonly label: string;
}

export interface StreakSeed {
  readonly from: StreakPlace;
  readonly to: StreakPlace;
}

export interface StreakViewProps {
  /** null until the line is known: the area then shows `placeholder`. */
  readonly geometry: StreakGeometry | null;
  readonly frameCount: number;
  readonly streak: StreakRows;
  /** Grey values shown as black and as white; null: the darkest and brightest of the lines that have come. */
  readonly contrast: { readonly low: number; readonly high: number } | null;
  /** The film's transform; both views must have the same width on screen. */
  readonly view: ReadonlySignal<FilmTransform>;
  readonly currentFrame: number;
  readonly centres: readonly StreakCentre[];
  readonly curve: readonly StreakCurvePoint[] | null;
  /** Muzzle plane along the axis, px from `origin`; null: not set. */
  readonly muzzle: number | null;
  readonly instants: readonly StreakInstant[];
  /** `count` frames are missing after frame `after`. */
  readonly lost: readonly { readonly after: number; readonly count: number }[];
  /** The slanted handle; null: shown only while `seeding`, at a starting place. */
  readonly seed: StreakSeed | null;
  /** Whether the seed handle can be drawn and dragged. */
  readonly seeding: boolean;
  /** A slope in words, speed included where clock and scale are known; px per frame unless given. */
  slopeText?(pixelsPerFrame: number): string;
  /** The time of a frame in words: '5.250 ms'; left out: not known. */
  timeText?(frame: number): string;
  /** Controls beside the zoom. */
  readonly tools?: ComponentChildren;
  /** Height of the area, CSS px (default 320); the time scale fits all frames in it until zoomed. */
  readonly height?: number;
  /** Text alternative: what the streak image shows, in a sentence or two. */
  readonly description: string;
  readonly placeholder?: string;

  /** The frame under the pointer; null: the pointer left. */
  onHover?(frame: number | null): void;
  /** A line was clicked, or stepped to with the keyboard. */
  onPick?(frame: number): void;
  /** `settled` is false during a drag, true at its end and on keyboard nudges. */
  onSeed?(seed: StreakSeed, settled: boolean): void;
}
