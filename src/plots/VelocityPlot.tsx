import { numberAt } from '../core/format';
import { Chart } from './Chart';
import { bandBounds, domainOf, padded } from './domain';
import { Figure, type PlotKey } from './Figure';
import { Curve, type PlotPoint, Points } from './marks';
import type { VelocityPlotProps } from './props';
import { bandText, plusMinus, timeText } from './text';
import { timeUnit } from './units';

const HEIGHT = 250;

/** Speed along the flight axis against time. */
export function VelocityPlot({ unit, curve, differences, exit }: VelocityPlotProps) {
  const points = differences.map(
    ({ time, v, u }, index): PlotPoint => ({
      frame: index,
      time,
      value: v,
      u,
      used: true,
      manual: false,
    }),
  );
  const times = domainOf([
    ...points.map(({ time }) => time),
    ...Array.from(curve?.times ?? []),
    ...(exit === null ? [] : [exit.time]),
  ]);
  const speeds = domainOf([
    ...points.map(({ value }) => value),
    ...(curve === null ? [] : bandBounds(curve)),
    ...(exit === null ? [] : exit.interval),
  ]);
  const units = { x: timeUnit(times[1] - times[0]), y: unit };
  const keys: PlotKey[] = [];
  if (points.length > 0) {
    keys.push({
      mark: 'used',
      text: 'difference of neighbouring centres, with its standard uncertainty',
    });
  }
  if (curve !== null) keys.push({ mark: 'curve', text: bandText(curve) });
  const exitRow =
    exit === null
      ? []
      : [
          ['at the exit', timeText(exit.time, units.x), numberAt(exit.value * unit.perSi, 5)],
          [
            'interval at the exit',
            '',
            exit.interval.map((end) => numberAt(end * unit.perSi, 5)).join(' to '),
          ],
        ];
  return (
    <Figure
      title="Speed"
      keys={keys}
      table={{
        columns: ['what', `time, ${units.x.symbol}`, `speed, ${unit.symbol}`],
        rows: [
          ...exitRow,
          ...points.map(({ time, value, u }) => [
            'difference',
            timeText(time, units.x),
            plusMinus(value, u, unit),
          ]),
        ],
      }}
      chart={(width) => (
        <Chart
          label="Speed against time"
          width={width}
          height={HEIGHT}
          x={{
            title: `time, ${units.x.symbol}`,
            domain: padded([times[0] * units.x.perSi, times[1] * units.x.perSi], 0.03),
          }}
          y={{
            title: `speed along the flight axis, ${unit.symbol}`,
            domain: padded([speeds[0] * unit.perSi, speeds[1] * unit.perSi], 0.08),
          }}
        >
          {(field) => (
            <>
              <Points field={field} points={points} units={units} />
              {curve !== null && <Curve field={field} curve={curve} units={units} />}
              {exit !== null && (
                <ExitMark
                  x={field.x(exit.time * units.x.perSi)}
                  y={field.y(exit.value * unit.perSi)}
                  low={field.y(exit.interval[0] * unit.perSi)}
                  high={field.y(exit.interval[1] * unit.perSi)}
                  right={field.right}
                />
              )}
            </>
          )}
        </Chart>
      )}
    />
  );
}

interface ExitMarkProps {
  readonly x: number;
  readonly y: number;
  readonly low: number;
  readonly high: number;
  readonly right: number;
}

/** A diamond at the exit, its interval as a capped bar. */
function ExitMark({ x, y, low, high, right }: ExitMarkProps) {
  const near = x > right - 60;
  return (
    <g class="plot-exit">
      <path d={`M${x} ${low}V${high}M${x - 5} ${low}h10M${x - 5} ${high}h10`} />
      <path class="plot-exit-mark" d={`M${x} ${y - 6}l6 6l-6 6l-6 -6z`} />
      <text x={near ? x - 11 : x + 11} y={y - 8} text-anchor={near ? 'end' : 'start'}>
        exit
      </text>
    </g>
  );
}
