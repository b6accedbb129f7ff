import { showNumberAt, showRange } from '../text/show';
import { t } from '../text/text';
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
      text: t('plots.speed.differences'),
    });
  }
  if (curve !== null) keys.push({ mark: 'curve', text: bandText(curve) });
  const exitRow =
    exit === null
      ? []
      : [
          [
            t('plots.speed.atExit'),
            timeText(exit.time, units.x),
            showNumberAt(exit.value * unit.perSi, 5),
          ],
          [
            t('plots.speed.intervalAtExit'),
            '',
            showRange(
              showNumberAt(exit.interval[0] * unit.perSi, 5),
              showNumberAt(exit.interval[1] * unit.perSi, 5),
            ),
          ],
        ];
  return (
    <Figure
      title={t('plots.speed.title')}
      keys={keys}
      table={{
        columns: [
          t('plots.what'),
          t('plots.time', { unit: units.x.symbol }),
          t('plots.speed.column', { unit: unit.symbol }),
        ],
        rows: [
          ...exitRow,
          ...points.map(({ time, value, u }) => [
            t('plots.speed.difference'),
            timeText(time, units.x),
            plusMinus(value, u, unit),
          ]),
        ],
      }}
      chart={(width) => (
        <Chart
          label={t('plots.speed.label')}
          width={width}
          height={HEIGHT}
          x={{
            title: t('plots.time', { unit: units.x.symbol }),
            domain: padded([times[0] * units.x.perSi, times[1] * units.x.perSi], 0.03),
          }}
          y={{
            title: t('plots.speed.y', { unit: unit.symbol }),
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
        {t('plots.speed.exit')}
      </text>
    </g>
  );
}
