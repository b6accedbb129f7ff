import { type ScaleContinuousNumeric, scaleLinear, scaleLog } from 'd3';
import type { ComponentChildren, TargetedPointerEvent } from 'preact';
import { useId } from 'preact/hooks';
import { showAs, showNumberAt } from '../text/show';
import './plots.css';

/** Linear, unless an axis asks for another. */
export type PlotScale = ScaleContinuousNumeric<number, number>;

export interface Axis {
  /** What it is and its unit: 'time, ms'. */
  readonly title: string;
  /** In the shown unit. */
  readonly domain: readonly [number, number];
  readonly logarithmic?: boolean;
}

/** What is drawn in a chart is given its scales, from shown units to CSS pixels. */
export interface Field {
  readonly x: PlotScale;
  readonly y: PlotScale;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

interface ChartProps {
  readonly label: string;
  readonly width: number;
  readonly height: number;
  readonly x: Axis;
  readonly y: Axis;
  /** Room above the field for the labels of instants, CSS px. */
  readonly headroom?: number;
  /** Leaves out the numbers and title under the field: a chart below shares them. */
  readonly bareX?: boolean;
  children(field: Field): ComponentChildren;
  /** Drawn over everything and not cut off. */
  above?(field: Field): ComponentChildren;
  onPointer?(place: { readonly left: number; readonly top: number } | null, field: Field): void;
  onClick?(): void;
}

/** CSS px. */
const LEFT = 58;
const RIGHT = 12;
const TITLE = 22;
const FOOT = 40;
const BARE_FOOT = 8;
const X_TICK_SPACING = 80;
const Y_TICK_SPACING = 42;

/** Left and right edge of the field in a chart of this width, CSS px. */
export const sidesOf = (width: number) =>
  ({ left: LEFT, right: Math.max(width - RIGHT, LEFT + 1) }) as const;

/** The field a chart of this size draws in. */
function fieldOf(
  props: Pick<ChartProps, 'width' | 'height' | 'x' | 'y' | 'headroom' | 'bareX'>,
): Field {
  const { left, right } = sidesOf(props.width);
  const top = TITLE + (props.headroom ?? 0);
  const bottom = Math.max(props.height - (props.bareX ? BARE_FOOT : FOOT), top + 1);
  return {
    x: scaleOf(props.x).range([left, right]),
    y: scaleOf(props.y).range([bottom, top]),
    left,
    right,
    top,
    bottom,
  };
}

const scaleOf = ({ domain, logarithmic }: Axis): PlotScale =>
  (logarithmic ? scaleLog() : scaleLinear()).domain(domain);

/** Leading figures of the numbers on a logarithmic axis. */
const LEADING = [1, 2, 5];

/** Round numbers along an axis, and how they are written. */
function ticksOf(scale: PlotScale, { domain, logarithmic }: Axis, count: number) {
  // Plain figures: a comma between thousands reads as a decimal point to many.
  if (!logarithmic) {
    const written = scale.tickFormat(count, 'f');
    return { ticks: scale.ticks(count), text: (tick: number) => showAs(written(tick)) };
  }
  const [low, high] = domain;
  const ticks: number[] = [];
  for (let power = Math.floor(Math.log10(low)); 10 ** power <= high; power++) {
    ticks.push(...LEADING.map((figure) => figure * 10 ** power));
  }
  return {
    ticks: ticks.filter((tick) => tick >= low && tick <= high),
    text: (tick: number) => showNumberAt(tick, 2),
  };
}

/** A field with axes, grid and titles; its children are cut off at the field's edge. */
export function Chart(props: ChartProps) {
  const clip = useId();
  const field = fieldOf(props);
  const { x, y, left, right, top, bottom } = field;
  const xCount = Math.max(2, Math.floor((right - left) / X_TICK_SPACING));
  const yCount = Math.max(2, Math.floor((bottom - top) / Y_TICK_SPACING));
  const across = ticksOf(x, props.x, xCount);
  const up = ticksOf(y, props.y, yCount);
  const point = (event: TargetedPointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    props.onPointer?.({ left: event.clientX - box.left, top: event.clientY - box.top }, field);
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: frames are stepped on the keyboard of film and streak image
    <svg
      class="plot-chart"
      width={props.width}
      height={props.height}
      viewBox={`0 0 ${props.width} ${props.height}`}
      role="img"
      aria-label={props.label}
      onPointerMove={point}
      onPointerDown={point}
      onPointerLeave={() => props.onPointer?.(null, field)}
      onClick={props.onClick}
    >
      <clipPath id={clip}>
        <rect x={left} y={top} width={right - left} height={bottom - top} />
      </clipPath>
      <g class="plot-axis plot-axis-y">
        {up.ticks.map((tick) => (
          <g key={tick} transform={`translate(0 ${y(tick)})`}>
            <path d={`M${left} 0H${right}`} />
            <text x={left - 8} dy="0.32em">
              {up.text(tick)}
            </text>
          </g>
        ))}
      </g>
      <g class="plot-axis plot-axis-x">
        {across.ticks.map((tick) => (
          <g key={tick} transform={`translate(${x(tick)} 0)`}>
            <path d={`M0 ${bottom}v5`} />
            {!props.bareX && <text y={bottom + 18}>{across.text(tick)}</text>}
          </g>
        ))}
      </g>
      <g clip-path={`url(#${clip})`}>{props.children(field)}</g>
      <path class="plot-frame" d={`M${left} ${top}V${bottom}H${right}`} />
      {props.above?.(field)}
      <text class="plot-title" x={0} y={13}>
        {props.y.title}
      </text>
      {!props.bareX && (
        <text class="plot-title plot-title-x" x={right} y={props.height - 5}>
          {props.x.title}
        </text>
      )}
    </svg>
  );
}
