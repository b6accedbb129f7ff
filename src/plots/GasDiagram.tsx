import { interpolateRgbBasis, line } from 'd3';
import { useMemo } from 'preact/hooks';
import { showNumberAt } from '../text/show';
import { t } from '../text/text';
import { Chart, type Field } from './Chart';
import { Figure } from './Figure';
import type { GasDiagramProps, GasRow } from './props';
import { timeText } from './text';
import { lengthUnit, type ShownUnit, timeUnit } from './units';

/** CSS px. */
const HEIGHT = 420;
/** Pixels of the picture along the barrel. */
const COLUMNS = 280;
/** Little pressure is dark, much is light, on a logarithmic scale: the residual air would not be seen otherwise. */
const RAMP = interpolateRgbBasis(['#10202b', '#0a4f78', '#0072b2', '#7db9dc', '#f2f8fb']);
const RAMP_STEPS = [0, 0.25, 0.5, 0.75, 1];

/** Pressure of the gas along the barrel against time, the ball's way through it, and the shocks. */
export function GasDiagram({ rows, barrelLength, opening, exit }: GasDiagramProps) {
  const unit = timeUnit(exit);
  const place = lengthUnit(barrelLength);
  const range = useMemo(() => pressureRange(rows), [rows]);
  const picture = useMemo(
    () => paint(rows, barrelLength, exit, range),
    [rows, barrelLength, exit, range],
  );
  const shocks = rows.flatMap(({ time, shocks: some }) =>
    some.map(({ position }) => ({ time, position })),
  );
  return (
    <Figure
      title={t('plots.gas.title')}
      keys={[
        { mark: 'ball', text: t('plots.gas.ball') },
        ...(shocks.length > 0 ? [{ mark: 'shock' as const, text: t('plots.gas.shock') }] : []),
      ]}
      table={{
        columns: [
          t('plots.time', { unit: unit.symbol }),
          t('plots.gas.ballColumn', { unit: place.symbol }),
          t('plots.gas.shockColumn', { unit: place.symbol }),
        ],
        rows: rows.map(({ time, ball, shocks: some }) => [
          timeText(time, unit),
          showNumberAt(ball * place.perSi, 4),
          some.map(({ position }) => showNumberAt(position * place.perSi, 4)).join('; '),
        ]),
      }}
      chart={(width) => (
        <>
          <Chart
            label={t('plots.gas.label')}
            width={width}
            height={HEIGHT}
            x={{
              title: t('plots.gas.x', { unit: place.symbol }),
              domain: [0, barrelLength * place.perSi],
            }}
            y={{ title: t('plots.gas.y', { unit: unit.symbol }), domain: [exit * unit.perSi, 0] }}
          >
            {(field) => (
              <>
                <image
                  href={picture}
                  x={field.left}
                  y={field.top}
                  width={field.right - field.left}
                  height={field.bottom - field.top}
                  preserveAspectRatio="none"
                />
                <Opening field={field} time={opening} unit={unit} />
                <Way field={field} rows={rows} place={place} unit={unit} />
                <g class="plot-shock">
                  {shocks.map(({ time, position }) => (
                    <circle
                      key={`${time} ${position}`}
                      cx={field.x(position * place.perSi)}
                      cy={field.y(time * unit.perSi)}
                      r="2.25"
                    />
                  ))}
                </g>
              </>
            )}
          </Chart>
          <Ramp range={range} />
        </>
      )}
    />
  );
}

function pressureRange(rows: readonly GasRow[]): readonly [number, number] {
  let [low, high] = [Infinity, 0];
  for (const { pressure } of rows) {
    for (let i = 0; i < pressure.length; i++) {
      low = Math.min(low, pressure[i] as number);
      high = Math.max(high, pressure[i] as number);
    }
  }
  return [low, high];
}

/** The picture as a data URL: one line an instant, evenly spaced in time. */
function paint(
  rows: readonly GasRow[],
  barrelLength: number,
  exit: number,
  [low, high]: readonly [number, number],
): string {
  const canvas = document.createElement('canvas');
  canvas.width = COLUMNS;
  canvas.height = Math.max(rows.length, 1);
  const context = canvas.getContext('2d');
  if (context === null) return '';
  const span = Math.log(high / low) || 1;
  for (let y = 0; y < canvas.height; y++) {
    const row = nearest(rows, ((y + 0.5) / canvas.height) * exit);
    if (row === undefined) break;
    let cell = 0;
    for (let x = 0; x < COLUMNS; x++) {
      const at = ((x + 0.5) / COLUMNS) * barrelLength;
      const { position, pressure } = row;
      // Past the last cell, half a cell on, the gas is followed no further.
      const end = position.length - 1;
      const last = 1.5 * (position[end] as number) - 0.5 * (position[end - 1] as number);
      if (at > Math.max(row.ball, last)) break;
      while (
        cell + 1 < position.length &&
        Math.abs((position[cell + 1] as number) - at) <= Math.abs((position[cell] as number) - at)
      )
        cell++;
      context.fillStyle = RAMP(Math.log((pressure[cell] as number) / low) / span);
      context.fillRect(x, y, 1, 1);
    }
  }
  return canvas.toDataURL();
}

function nearest(rows: readonly GasRow[], time: number): GasRow | undefined {
  let best = rows[0];
  for (const row of rows) {
    if (Math.abs(row.time - time) < Math.abs((best?.time ?? 0) - time)) best = row;
  }
  return best;
}

function Opening(props: {
  readonly field: Field;
  readonly time: number;
  readonly unit: ShownUnit;
}) {
  const { field, time, unit } = props;
  const y = field.y(time * unit.perSi);
  return (
    <g class="plot-over">
      <path d={`M${field.left} ${y}H${field.right}`} />
      <text x={field.left + 8} y={y - 6}>
        muzzle seal opens
      </text>
    </g>
  );
}

function Way(props: {
  readonly field: Field;
  readonly rows: readonly GasRow[];
  readonly place: ShownUnit;
  readonly unit: ShownUnit;
}) {
  const { field, rows, place, unit } = props;
  const path = line<GasRow>()
    .x(({ ball }) => field.x(ball * place.perSi))
    .y(({ time }) => field.y(time * unit.perSi));
  return <path class="plot-way" d={path(rows) ?? ''} />;
}

/** What the shades stand for. */
function Ramp({ range: [low, high] }: { readonly range: readonly [number, number] }) {
  const stops = RAMP_STEPS.map((share) => RAMP(share)).join(', ');
  return (
    <p class="plot-ramp">
      {showNumberAt(low / 1000, 2)} kPa
      <span
        style={{ width: '160px', height: '10px', background: `linear-gradient(90deg, ${stops})` }}
      />
      {t('plots.gas.logarithmic', { pressure: `${showNumberAt(high / 1000, 3)} kPa` })}
    </p>
  );
}
