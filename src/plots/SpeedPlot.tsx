import { area, curveMonotoneX, line } from 'd3';
import { showNumberAt, showPercent, showRange } from '../text/show';
import { t } from '../text/text';
import { Chart, type Field } from './Chart';
import { domainOf, padded } from './domain';
import { Figure, type PlotKey } from './Figure';
import type { PlotPoint } from './marks';
import type { MeasuredSpeed, SpeedCurve, SpeedPlotProps } from './props';
import type { ShownUnit } from './units';
import { usePointPicking } from './usePointPicking';

/** CSS px. */
const HEIGHT = 320;
const DIAMOND = 5;
const CAP = 4;
/** Of more points than this only the marks are drawn small, without caps. */
const MANY = 60;

interface Units {
  readonly x: ShownUnit;
  readonly y: ShownUnit;
}

/** Exit speeds against a number of the launcher: what models say, with their bands, and what was measured. */
export function SpeedPlot(props: SpeedPlotProps) {
  const { title, axis, unit, curves, measured, coverage, onPick } = props;
  const units = { x: axis.unit, y: unit };
  const points = measured.map(
    ({ x, speed }, frame): PlotPoint => ({
      ...{ frame, time: x, value: speed, u: 0 },
      ...{ used: true, manual: false },
    }),
  );
  const picking = usePointPicking(points, units, onPick);
  const all = curves.flatMap(({ points: some }) => some);
  const xs = domainOf([
    ...all.map(({ x }) => x),
    ...measured.flatMap(({ xLow, xHigh }) => [xLow, xHigh]),
  ]);
  const speeds = domainOf([...all, ...measured].flatMap(({ low, high }) => [low, high]));
  const percent = showPercent(coverage);
  const keys: PlotKey[] = curves.map(({ name, look }) => ({ mark: look, text: name }));
  if (measured.length > 0)
    keys.push({ mark: 'measured', text: t('plots.launches.measured', { percent }) });
  const pointed = picking.pointed === null ? undefined : measured[picking.pointed.frame];
  const axisTitle = [axis.name, axis.unit.symbol].filter(Boolean).join(', ');
  return (
    <Figure
      title={title}
      reading={pointed === undefined ? null : readingOf(pointed, units)}
      keys={keys}
      table={{
        columns: [
          t('plots.what'),
          axisTitle,
          t('plots.speed.column', { unit: unit.symbol }),
          t('plots.percentInterval', { percent, unit: unit.symbol }),
        ],
        rows: [
          // Thousands of shots are listed in a table of their own.
          ...(measured.length > MANY ? [] : measured.map((one) => rowOf(one.name, one, units))),
          ...curves.flatMap(({ name, points: some }) => some.map((one) => rowOf(name, one, units))),
        ],
      }}
      chart={(width) => (
        <Chart
          label={t('plots.launches.label', { axis: axis.name })}
          width={width}
          height={HEIGHT}
          x={{ title: axisTitle, domain: shown(padded(xs, 0.04), units.x) }}
          y={{
            title: t('plots.launches.y', { unit: unit.symbol }),
            domain: shown(padded(speeds, 0.06), unit),
          }}
          onPointer={picking.onPointer}
          onClick={picking.onClick}
        >
          {(field) => (
            <>
              {curves.map((curve) => (
                <Line key={curve.name} field={field} curve={curve} units={units} />
              ))}
              <Measured field={field} measured={measured} units={units} />
            </>
          )}
        </Chart>
      )}
    />
  );
}

const shown = ([low, high]: readonly [number, number], { perSi }: ShownUnit) =>
  [low * perSi, high * perSi] as const;

const rowOf = (
  name: string,
  { x, speed, low, high }: SpeedCurve['points'][number],
  units: Units,
): string[] => [
  name,
  showNumberAt(x * units.x.perSi, 4),
  showNumberAt(speed * units.y.perSi, 5),
  showRange(showNumberAt(low * units.y.perSi, 5), showNumberAt(high * units.y.perSi, 5)),
];

const readingOf = (one: MeasuredSpeed, { x, y }: Units): string =>
  t('plots.launches.reading', {
    name: one.name,
    speed: `${showNumberAt(one.speed * y.perSi, 5)} ${y.symbol}`,
    x: `${showNumberAt(one.x * x.perSi, 4)} ${x.symbol}`,
  });

function Line(props: { readonly field: Field; readonly curve: SpeedCurve; readonly units: Units }) {
  const { field, curve, units } = props;
  type Point = SpeedCurve['points'][number];
  const left = ({ x }: Point) => field.x(x * units.x.perSi);
  const top = (speed: number) => field.y(speed * units.y.perSi);
  const band = area<Point>()
    .curve(curveMonotoneX)
    .x(left)
    .y0(({ low }) => top(low))
    .y1(({ high }) => top(high));
  const middle = line<Point>()
    .curve(curveMonotoneX)
    .x(left)
    .y(({ speed }) => top(speed));
  return (
    <g class={`plot-look plot-look-${curve.look}`}>
      <path class="plot-look-band" d={band(curve.points) ?? ''} />
      <path d={middle(curve.points) ?? ''} />
    </g>
  );
}

/** Diamonds with capped bars both ways, as one path each: a series may hold thousands. */
function Measured(props: {
  readonly field: Field;
  readonly measured: readonly MeasuredSpeed[];
  readonly units: Units;
}) {
  const { field, measured, units } = props;
  const many = measured.length > MANY;
  const [r, cap] = many ? [DIAMOND / 2, 0] : [DIAMOND, CAP];
  let bars = '';
  let marks = '';
  for (const { x, xLow, xHigh, speed, low, high } of measured) {
    const [left, right] = [field.x(xLow * units.x.perSi), field.x(xHigh * units.x.perSi)];
    const [bottom, top] = [field.y(low * units.y.perSi), field.y(high * units.y.perSi)];
    const [at, level] = [field.x(x * units.x.perSi), field.y(speed * units.y.perSi)];
    bars += `M${at} ${bottom}V${top}M${left} ${level}H${right}`;
    if (cap > 0) bars += `M${at - cap} ${bottom}h${2 * cap}M${at - cap} ${top}h${2 * cap}`;
    marks += `M${at} ${level - r}l${r} ${r}l${-r} ${r}l${-r} ${-r}z`;
  }
  return (
    <g class="plot-exit">
      <path d={bars} />
      <path class="plot-exit-mark" d={marks} />
    </g>
  );
}
