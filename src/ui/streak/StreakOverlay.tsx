import { wholeTicks } from '../../plots/ticks';
import { t } from '../../text/text';
import { Cased } from '../film/Cased';
import { markPaths, thinned } from '../film/marks';
import { alongToLeft, frameToTop, type TimeScale, topToFrame } from './mapping';
import type {
  StreakCentre,
  StreakCurvePoint,
  StreakInstant,
  StreakPlace,
  StreakViewProps,
} from './props';

interface StreakOverlayProps {
  readonly props: StreakViewProps;
  readonly time: TimeScale;
  readonly width: number;
  readonly height: number;
  readonly hovered: number | null;
  /** The side the labels of instants stand on. */
  readonly labelSide: 'left' | 'right';
  /** Place in the area's CSS px; null while the line is not known. */
  toPlace(place: StreakPlace): readonly [number, number] | null;
}

/** CSS px. */
const TICK_SPACING = 56;
/** A standard uncertainty shorter than this hides behind its mark. */
const MARK_REACH = 4;

/** Everything drawn over the streak image, in the area's CSS pixels. */
export function StreakOverlay({
  props,
  time,
  width,
  height,
  hovered,
  labelSide,
  toPlace,
}: StreakOverlayProps) {
  const { geometry, curve, centres, muzzle, lost, instants, currentFrame } = props;
  const muzzleLeft =
    muzzle === null || geometry === null
      ? null
      : alongToLeft(geometry, props.view.value, width, muzzle);
  const current = frameToTop(time, currentFrame);
  return (
    <svg class="streak-overlay" width={width} height={height} aria-hidden="true">
      {lost.map(({ after, count }) => {
        const top = frameToTop(time, after + 0.5);
        return (
          <g key={after}>
            <Cased class="streak-lost" d={`M0 ${top}H${width}`} />
            <text
              class={`film-label ${labelSide === 'left' ? 'streak-label-end' : ''}`}
              x={labelSide === 'left' ? width - 8 : 62}
              y={top - 4}
            >
              {t('streak.lost', { n: count })}
            </text>
          </g>
        );
      })}
      {instants.map((instant) => (
        <Interval key={instant.kind} instant={instant} time={time} width={width} />
      ))}
      {muzzleLeft !== null && (
        <>
          <Cased class="film-muzzle" d={`M${muzzleLeft} 0V${height}`} />
          <text
            class={`film-label ${muzzleLeft > width - 100 ? 'streak-label-end' : ''}`}
            x={muzzleLeft + (muzzleLeft > width - 100 ? -6 : 6)}
            y={height - 8}
          >
            {t('streak.muzzle')}
          </text>
        </>
      )}
      {curve !== null && <Curve curve={curve} toPlace={toPlace} />}
      <Centres centres={centres} toPlace={toPlace} />
      <Cased class="streak-current" d={`M0 ${current}H14M${width - 14} ${current}H${width}`} />
      <path class="streak-current-line" d={`M14 ${current}H${width - 14}`} />
      {hovered !== null && (
        <path class="streak-hovered" d={`M0 ${frameToTop(time, hovered)}H${width}`} />
      )}
      <Frames time={time} height={height} frameCount={props.frameCount} />
    </svg>
  );
}

interface FramesProps {
  readonly time: TimeScale;
  readonly height: number;
  readonly frameCount: number;
}

/** Frame numbers down the left edge. */
function Frames({ time, height, frameCount }: FramesProps) {
  const last = Math.min(topToFrame(time, height), frameCount - 1);
  const ticks = wholeTicks(Math.max(time.topFrame, 0), last, Math.ceil(height / TICK_SPACING));
  return (
    <>
      {ticks.map((frame, index) => {
        const top = frameToTop(time, frame);
        const baseline = top < 16 ? top + 13 : top - 3;
        return (
          <g key={frame}>
            <Cased class="streak-tick" d={`M0 ${top}h26`} />
            <text class="film-label" x={4} y={baseline}>
              {index === 0 ? t('streak.frame', { frame }) : frame}
            </text>
          </g>
        );
      })}
    </>
  );
}

interface IntervalProps {
  readonly instant: StreakInstant;
  readonly time: TimeScale;
  readonly width: number;
}

function Interval({ instant, time, width }: IntervalProps) {
  const top = frameToTop(time, instant.frame);
  const low = frameToTop(time, instant.low);
  const high = frameToTop(time, instant.high);
  return (
    <g class={`streak-instant streak-instant-${instant.kind}`}>
      <rect x="0" y={low} width={width} height={Math.max(high - low, 0)} />
      <Cased class="streak-instant-line" d={`M0 ${top}H${width}`} />
    </g>
  );
}

interface CurveProps {
  readonly curve: readonly StreakCurvePoint[];
  readonly toPlace: StreakOverlayProps['toPlace'];
}

function Curve({ curve, toPlace }: CurveProps) {
  const sides = (side: number) =>
    curve.flatMap(({ frame, along, halfWidth }) => {
      const place = toPlace({ frame, along: along + side * halfWidth });
      return place === null ? [] : [place.join(' ')];
    });
  const middle = sides(0);
  if (middle.length < 2) return null;
  return (
    <>
      <path class="streak-band" d={`M${[...sides(1), ...sides(-1).reverse()].join('L')}Z`} />
      <Cased class="film-path" d={`M${middle.join('L')}`} />
    </>
  );
}

interface CentresProps {
  readonly centres: readonly StreakCentre[];
  readonly toPlace: StreakOverlayProps['toPlace'];
}

function Centres({ centres, toPlace }: CentresProps) {
  let bars = '';
  const places = centres.flatMap(({ frame, along, u, used, manual }) => {
    const place = toPlace({ frame, along });
    const end = toPlace({ frame, along: along + u });
    if (place === null || end === null) return [];
    const reach = Math.abs(end[0] - place[0]);
    if (used && reach > MARK_REACH) bars += `M${place[0] - reach} ${place[1]}h${2 * reach}`;
    return [{ left: place[0], top: place[1], used, manual }];
  });
  const marks = markPaths(thinned(places));
  return (
    <>
      <Cased class="film-mark-used" d={bars} />
      <Cased class="film-mark-refused" d={marks.refused} />
      <Cased class="film-mark-manual" d={marks.manual} />
      <Cased class="film-mark-used" d={marks.used} />
    </>
  );
}
