import { contours, geoPath, geoTransform, interpolateRgbBasis, scaleLog } from 'd3';
import { useMemo, useState } from 'preact/hooks';
import { showNumber, showNumberAt } from '../text/show';
import { t } from '../text/text';
import { Chart, type Field } from './Chart';
import { Figure } from './Figure';
import type { ContourPlotProps } from './props';

/** CSS px. */
const HEIGHT = 400;
/** Little uncertainty is light, much is dark. */
const RAMP = interpolateRgbBasis(['#f2f8fb', '#9ecbe6', '#4a98c9', '#0a5b8c', '#0d2c40']);
/** Steps between lines, as factors; as many as fit into what is to be shown. */
const FACTORS = [1.1, 1.25, 1.5, 2] as const;
const MOST_LINES = 9;
const METRES_TO_MM = 1000;

/** Relative uncertainty of the exit velocity over rate and field of view; both run on a logarithmic scale. */
export function ContourPlot({ rates, fields, cells, best, planned }: ContourPlotProps) {
  const [picked, setPicked] = useState<number | null>(null);
  const values = cells.flatMap(({ value }) => (value === null ? [] : [value]));
  const lines = useMemo(() => linesBetween(values), [cells]);
  const shades = useMemo(
    () =>
      shadesOf(
        cells.map(({ value }) => value),
        rates.length,
        fields.length,
        lines,
      ),
    [cells, lines],
  );
  const at = (index: number) => ({
    rate: rates[index % rates.length] as number,
    across: fields[Math.floor(index / rates.length)] as number,
  });
  return (
    <Figure
      title={t('plots.contour.title')}
      reading={picked === null ? null : wordsOf(at(picked), cells[picked] ?? NOTHING)}
      keys={[
        { mark: 'measured', text: t('plots.contour.least') },
        { mark: 'planned', text: t('plots.contour.plan') },
        ...(values.length < cells.length
          ? [{ mark: 'impossible' as const, text: t('plots.contour.impossible') }]
          : []),
      ]}
      table={{
        columns: [t('plots.contour.rate'), t('plots.contour.field'), 'u(v)/v, %'],
        rows: cells.map(({ value, why }, i) => [
          showNumberAt(at(i).rate, 4),
          showNumberAt(at(i).across * METRES_TO_MM, 3),
          value === null ? (why ?? '') : showNumberAt(100 * value, 2),
        ]),
      }}
      chart={(width) => (
        <>
          <Chart
            label={t('plots.contour.label')}
            width={width}
            height={HEIGHT}
            x={{ title: t('plots.contour.rate'), domain: ends(rates, 1), logarithmic: true }}
            y={{
              title: t('plots.contour.field'),
              domain: ends(fields, METRES_TO_MM),
              logarithmic: true,
            }}
            onPointer={(place, field) =>
              setPicked(place === null ? null : nearest(place, field, rates, fields))
            }
          >
            {(field) => (
              <>
                <g>
                  {shades.map(({ value, geometry }, i) => (
                    <path
                      key={value}
                      class="plot-contour"
                      d={pathIn(field, rates.length, fields.length)(geometry) ?? ''}
                      fill={RAMP(i / Math.max(1, shades.length - 1))}
                    />
                  ))}
                </g>
                <Impossible
                  field={field}
                  cells={cells}
                  columns={rates.length}
                  rows={fields.length}
                />
                <Planned field={field} {...planned} />
                {best !== null && <Best field={field} {...at(best)} />}
              </>
            )}
          </Chart>
          <Ramp lines={lines} />
        </>
      )}
    />
  );
}

const NOTHING = { value: null, why: null };

const ends = (values: readonly number[], perSi: number): readonly [number, number] => [
  (values[0] ?? 1) * perSi,
  (values.at(-1) ?? 10) * perSi,
];

function wordsOf(
  { rate, across }: { readonly rate: number; readonly across: number },
  { value, why }: ContourPlotProps['cells'][number],
): string {
  return t('plots.contour.reading', {
    rate: showNumberAt(rate, 3),
    across: showNumberAt(across * METRES_TO_MM, 3),
    told: value === null ? (why ?? '') : `${showNumber(100 * value, 2)} %`,
  });
}

/** Values at which lines are drawn: the least, then by the smallest of the factors that gives few enough. */
function linesBetween(values: readonly number[]): number[] {
  const low = Math.min(...values);
  const high = Math.max(...values);
  if (!(high > low)) return values.length > 0 ? [low] : [];
  const factor =
    FACTORS.find((one) => Math.log(high / low) / Math.log(one) <= MOST_LINES) ??
    (high / low) ** (1 / MOST_LINES);
  const lines = [low];
  for (let value = low * factor; value < high; value *= factor) lines.push(value);
  return lines;
}

/** What lies at or above each line, in cells; the cells that have no value above them all. */
function shadesOf(
  values: readonly (number | null)[],
  columns: number,
  rows: number,
  lines: readonly number[],
) {
  const top = Math.log(2 * Math.max(...values.map((value) => value ?? 0)));
  const grid = values.map((value) => (value === null ? top : Math.log(value)));
  const found = contours()
    .size([columns, rows])
    .thresholds(lines.map((line) => Math.log(line) - 1e-9))(grid);
  return found.map((geometry, i) => ({ value: lines[i] ?? 0, geometry }));
}

/** From cells, whose middles are at halves, to the field; the outer half cells lie beyond its edge. */
function pathIn(field: Field, columns: number, rows: number) {
  return geoPath(
    geoTransform({
      point(x, y) {
        this.stream.point(
          placeIn(field.left, field.right, x, columns),
          placeIn(field.bottom, field.top, y, rows),
        );
      },
    }),
  );
}

/** The first and the last cell's middle lie on the field's edges; what d3 draws beyond them is drawn out a little. */
const placeIn = (from: number, to: number, cell: number, count: number): number =>
  from + ((cell - 0.5) / Math.max(1, count - 1)) * (to - from);

function Impossible(props: {
  readonly field: Field;
  readonly cells: ContourPlotProps['cells'];
  readonly columns: number;
  readonly rows: number;
}) {
  const { field, cells, columns, rows } = props;
  const side = (from: number, to: number, cell: number, count: number) =>
    [placeIn(from, to, cell, count), placeIn(from, to, cell + 1, count)] as const;
  return (
    <g class="plot-impossible">
      {cells.map(({ value }, i) => {
        if (value !== null) return null;
        const [left, right] = side(field.left, field.right, i % columns, columns);
        const [bottom, top] = side(field.bottom, field.top, Math.floor(i / columns), rows);
        return (
          <g key={i}>
            <rect x={left} y={top} width={right - left + 0.5} height={bottom - top + 0.5} />
            <path d={`M${left} ${bottom}L${right} ${top}`} />
          </g>
        );
      })}
    </g>
  );
}

interface Place {
  readonly field: Field;
  readonly rate: number;
  readonly across: number;
}

function Best({ field, rate, across }: Place) {
  const [x, y] = [field.x(rate), field.y(across * METRES_TO_MM)];
  // A mark on the edge would be cut in half.
  const [cx, cy] = [inside(x, field.left, field.right), inside(y, field.top, field.bottom)];
  return (
    <g class="plot-exit">
      <path class="plot-exit-mark plot-best" d={`M${cx} ${cy - 8}l8 8l-8 8l-8 -8z`} />
    </g>
  );
}

function Planned({ field, rate, across }: Place) {
  return (
    <circle class="plot-planned" cx={field.x(rate)} cy={field.y(across * METRES_TO_MM)} r="6" />
  );
}

const MARK = 9;
const inside = (place: number, low: number, high: number): number =>
  Math.min(high - MARK, Math.max(low + MARK, place));

/** The cell under a place in the drawing. */
function nearest(
  { left, top }: { readonly left: number; readonly top: number },
  field: Field,
  rates: readonly number[],
  fields: readonly number[],
): number | null {
  if (left < field.left || left > field.right || top < field.top || top > field.bottom) return null;
  const closest = (values: readonly number[], value: number) => {
    const scale = scaleLog()
      .domain(ends(values, 1))
      .range([0, values.length - 1]);
    return Math.round(scale(value));
  };
  const column = closest(rates, field.x.invert(left));
  const row = closest(fields, field.y.invert(top) / METRES_TO_MM);
  return row * rates.length + column;
}

/** What the shades stand for: from each value on. */
function Ramp({ lines }: { readonly lines: readonly number[] }) {
  return (
    <ol class="plot-shades" aria-hidden="true">
      {lines.map((value, i) => (
        <li key={value}>
          <span style={{ background: RAMP(i / Math.max(1, lines.length - 1)) }} />
          {showNumber(100 * value, 2)} %
        </li>
      ))}
    </ol>
  );
}
