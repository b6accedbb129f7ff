import { area, line } from 'd3';
import type { Field } from './Chart';
import type { BandCurve } from './props';
import type { ShownUnit } from './units';

/** A measured value over time, in SI. */
export interface PlotPoint {
  readonly frame: number;
  readonly time: number;
  readonly value: number;
  readonly u: number;
  readonly used: boolean;
  readonly manual: boolean;
}

export interface Units {
  readonly x: ShownUnit;
  readonly y: ShownUnit;
}

/** Half the size of a mark, CSS px. */
const RADIUS = 3;
const round = (place: number) => Math.round(place * 100) / 100;

interface CurveProps {
  readonly field: Field;
  readonly curve: BandCurve;
  readonly units: Units;
}

/** The fitted curve and its coverage band. */
export function Curve({ field, curve, units }: CurveProps) {
  const { times, values, u, coverageFactor } = curve;
  const indices = Array.from({ length: times.length }, (_, index) => index);
  const left = (i: number) => field.x((times[i] as number) * units.x.perSi);
  const top = (i: number, side: number) =>
    field.y(((values[i] as number) + side * coverageFactor * (u[i] as number)) * units.y.perSi);
  const band = area<number>()
    .x(left)
    .y0((i) => top(i, -1))
    .y1((i) => top(i, 1));
  const middle = line<number>()
    .x(left)
    .y((i) => top(i, 0));
  return (
    <>
      <path class="plot-band" d={band(indices) ?? ''} />
      <path class="plot-curve" d={middle(indices) ?? ''} />
    </>
  );
}

interface PointsProps {
  readonly field: Field;
  readonly points: readonly PlotPoint[];
  readonly units: Units;
  /** Half length of the error bars in standard uncertainties; 0: none. */
  readonly bars?: number;
  readonly currentFrame?: number | null;
}

/** Measured points: dot used, square placed by hand, cross not used; beyond the field an arrowhead at its edge. */
export function Points({ field, points, units, bars = 1, currentFrame = null }: PointsProps) {
  const paths = { bars: '', used: '', manual: '', refused: '', beyond: '', current: '' };
  const r = RADIUS;
  for (const { frame, time, value, u, used, manual } of points) {
    const x = round(field.x(time * units.x.perSi));
    const y = round(field.y(value * units.y.perSi));
    if (y < field.top || y > field.bottom) {
      const up = y < field.top;
      const edge = up ? field.top + 1 : field.bottom - 1;
      paths.beyond += `M${x} ${edge}l${r} ${up ? 2 * r : -2 * r}h${-2 * r}z`;
      continue;
    }
    const reach = bars * u * units.y.perSi;
    const high = round(field.y(value * units.y.perSi + reach));
    const low = round(field.y(value * units.y.perSi - reach));
    if (used && low - high > 2 * r) paths.bars += `M${x} ${high}V${low}`;
    if (!used)
      paths.refused += `M${x - r} ${y - r}l${2 * r} ${2 * r}m0 ${-2 * r}l${-2 * r} ${2 * r}`;
    else if (manual) paths.manual += `M${x - r} ${y - r}h${2 * r}v${2 * r}h${-2 * r}z`;
    else paths.used += `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
    if (frame === currentFrame) {
      paths.current = `M${x - 7} ${y}a7 7 0 1 0 14 0a7 7 0 1 0 -14 0`;
    }
  }
  return (
    <>
      {paths.bars !== '' && <path class="plot-bars" d={paths.bars} />}
      {paths.beyond !== '' && <path class="plot-beyond" d={paths.beyond} />}
      {paths.used !== '' && <path class="plot-used" d={paths.used} />}
      {paths.manual !== '' && <path class="plot-manual" d={paths.manual} />}
      {paths.refused !== '' && <path class="plot-refused" d={paths.refused} />}
      {paths.current !== '' && <path class="plot-current" d={paths.current} />}
    </>
  );
}
