import type { TargetedKeyboardEvent } from 'preact';
import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { useWidth } from '../../plots/useWidth';
import { showFixed } from '../../text/show';
import { t } from '../../text/text';
import type { Place } from '../film/pointer';
import { greyRange } from './greyRange';
import { InstantLabels } from './InstantLabels';
import {
  alongToLeft,
  fitTime,
  frameAt,
  frameToTop,
  isSteep,
  LARGEST_ROW,
  leftToAlong,
  revealFrame,
  scrollTime,
  type TimeScale,
  topToFrame,
  zoomTime,
} from './mapping';
import type { StreakPlace, StreakSeed, StreakViewProps } from './props';
import { SeedHandles, startingSeed } from './SeedHandles';
import { StreakOverlay } from './StreakOverlay';
import './streak.css';
import { useStreakGestures } from './useStreakGestures';
import { useStreakPainting } from './useStreakPainting';

const DEFAULT_HEIGHT = 320;
const ZOOM_STEP = 1.5;

const STEPS: Readonly<Record<string, number>> = {
  ArrowUp: -1,
  ArrowDown: 1,
  PageUp: -10,
  PageDown: 10,
  Home: -Infinity,
  End: Infinity,
};

const slopeWords = (slope: number): string => t('streak.slope', { slope: showFixed(slope, 2) });

/** The place pointed at; `time` as text, where it is known. */
function pointedWords({ frame, along }: StreakPlace, time: string | undefined): string {
  const place = { frame, along: showFixed(along, 1) };
  return time === undefined
    ? t('streak.pointed', place)
    : t('streak.pointedTime', { ...place, time });
}

/** Every frame's line of grey values along the flight axis, stacked downwards in time under the film. */
export function StreakView(props: StreakViewProps) {
  const { geometry, frameCount, currentFrame } = props;
  const area = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const descriptionId = useId();
  const width = useWidth(area);
  const height = Math.min(props.height ?? DEFAULT_HEIGHT, Math.max(frameCount, 1) * LARGEST_ROW);
  const [zoomed, setZoomed] = useState<TimeScale | null>(null);
  const [hovered, setHovered] = useState<StreakPlace | null>(null);
  /** The slanted line while it is being drawn or dragged. */
  const [drawn, setDrawn] = useState<StreakSeed | null>(null);
  const time = zoomed ?? fitTime(frameCount, height);
  const view = props.view.value;

  // What was being drawn ends with its tool.
  useLayoutEffect(() => setDrawn(null), [props.seeding]);
  // Another film, or another height, starts with all frames shown.
  useLayoutEffect(() => setZoomed(null), [frameCount, height]);
  useLayoutEffect(() => {
    setZoomed((now) => now && revealFrame(now, currentFrame, frameCount, height));
  }, [currentFrame, frameCount, height]);
  const contrast = props.contrast ?? greyRange(props.streak.rows.values());
  useStreakPainting(canvas, geometry, props.streak, contrast, view, time, width, height);

  const toPlace = ({ frame, along }: StreakPlace): readonly [number, number] | null =>
    geometry === null ? null : [alongToLeft(geometry, view, width, along), frameToTop(time, frame)];
  const fromPlace = (left: number, top: number): StreakPlace | null =>
    geometry === null || width === 0
      ? null
      : {
          frame: Math.min(Math.max(topToFrame(time, top), 0), frameCount - 1),
          along: leftToAlong(geometry, view, width, left),
        };

  // A pinch stretches and moves at once: each goes on from what the other left.
  const change = (by: (time: TimeScale) => TimeScale) =>
    setZoomed((now) => {
      const all = fitTime(frameCount, height);
      const next = by(now ?? all);
      return next.rowHeight <= all.rowHeight * (1 + 1e-9) ? null : next;
    });
  // Buttons and keys keep the current frame where it stands, if it is in sight.
  const currentTop = frameToTop(time, currentFrame);
  const anchor = currentTop >= 0 && currentTop <= height ? currentTop : height / 2;
  const zoom = (factor: number, top = anchor) =>
    change((now) => zoomTime(now, factor, top, frameCount, height));
  const hover = (place: Place | null) => {
    const at = place === null || frameCount === 0 ? null : fromPlace(place.left, place.top);
    const next = at === null ? null : { frame: Math.round(at.frame), along: at.along };
    setHovered(next);
    if (next?.frame !== hovered?.frame) props.onHover?.(next?.frame ?? null);
  };

  const tellSeed = (next: StreakSeed, settled: boolean) => {
    setDrawn(settled ? null : next);
    props.onSeed?.(next, settled);
  };

  useStreakGestures(area, {
    seeding: props.seeding && geometry !== null,
    scrollable: zoomed !== null,
    zoom,
    scroll: (down) => change((now) => scrollTime(now, down, frameCount, height)),
    hover,
    click: (top) => frameCount > 0 && props.onPick?.(frameAt(time, top, frameCount)),
    drawSeed(start, end, settled) {
      const from = fromPlace(start.left, start.top);
      const to = fromPlace(end.left, end.top);
      if (from !== null && to !== null) tellSeed({ from, to }, settled);
    },
    dropSeed: () => setDrawn(null),
  });

  const keys = (event: TargetedKeyboardEvent<HTMLDivElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const step = STEPS[event.key];
    if (step !== undefined) {
      props.onPick?.(Math.min(Math.max(currentFrame + step, 0), frameCount - 1));
    } else if (event.key === '+' || event.key === '=') zoom(ZOOM_STEP);
    else if (event.key === '-') zoom(1 / ZOOM_STEP);
    else if (event.key === '0') setZoomed(null);
    else return;
    event.preventDefault();
  };

  const steep = geometry !== null && isSteep(geometry);
  const labelSide = geometry !== null && !steep && geometry.axis[0] < 0 ? 'right' : 'left';
  const pointed = hovered && pointedWords(hovered, props.timeText?.(hovered.frame));
  const seed =
    drawn ??
    props.seed ??
    (props.seeding ? startingSeed(props.curve, fromPlace, width, height) : null);
  const instants = geometry === null ? [] : props.instants; // they would lie over the placeholder
  const picture = (
    <div
      ref={area}
      class={`streak ${props.seeding ? 'streak-seeding' : ''} ${zoomed === null ? '' : 'streak-zoomed'}`}
      style={{ height: `${height}px` }}
    >
      <p id={descriptionId} class="hidden-text">
        {props.description} {t('streak.keys')}
      </p>
      <canvas ref={canvas} class="streak-picture" />
      <div
        class="streak-surface"
        role="slider"
        tabIndex={0}
        aria-label={t('streak.label')}
        aria-describedby={descriptionId}
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={Math.max(frameCount - 1, 0)}
        aria-valuenow={currentFrame}
        aria-valuetext={t('streak.now', { frame: currentFrame, count: frameCount })}
        onKeyDown={keys}
      />
      {geometry === null && <p class="film-placeholder">{props.placeholder ?? ''}</p>}
      <StreakOverlay
        props={{ ...props, instants }}
        time={time}
        width={width}
        height={height}
        hovered={hovered?.frame ?? null}
        labelSide={labelSide}
        toPlace={toPlace}
      />
      <InstantLabels instants={instants} time={time} height={height} side={labelSide} />
      {seed !== null && (
        <SeedHandles
          seed={seed}
          movable={props.seeding}
          width={width}
          height={height}
          toPlace={toPlace}
          fromPlace={fromPlace}
          slopeText={props.slopeText ?? slopeWords}
          onSeed={tellSeed}
        />
      )}
    </div>
  );
  return (
    <div class="film-block">
      {picture}
      <div class="film-strip">
        <span>{pointed ?? t(steep ? 'streak.steepNote' : 'streak.note')}</span>
        {props.tools}
        <div class="film-buttons">
          <button type="button" aria-label={t('streak.stretch')} onClick={() => zoom(ZOOM_STEP)}>
            +
          </button>
          <button
            type="button"
            aria-label={t('streak.compress')}
            disabled={zoomed === null}
            onClick={() => zoom(1 / ZOOM_STEP)}
          >
            −
          </button>
          <button type="button" disabled={zoomed === null} onClick={() => setZoomed(null)}>
            {t('streak.all')}
          </button>
        </div>
      </div>
    </div>
  );
}
