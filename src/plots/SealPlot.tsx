import { Chart } from './Chart';
import { domainOf, padded } from './domain';
import { Figure } from './Figure';
import { headroomFor, InstantLabels, Instants, placeLabels } from './Instants';
import { type PlotPoint, Points } from './marks';
import type { SealPlotProps } from './props';
import { instantRows, plusMinus, timeText } from './text';
import { lengthUnit, timeUnit } from './units';

/** Without the room for labels, CSS px. */
const HEIGHT = 250;

/** How far the seal's film stands out, against time, with the instants of the shot. */
export function SealPlot({ times, front, frontU, instants }: SealPlotProps) {
  const points = Array.from(
    { length: times.length },
    (_, index): PlotPoint => ({
      frame: index,
      time: times[index] as number,
      value: front[index] as number,
      u: frontU[index] as number,
      used: true,
      manual: false,
    }),
  );
  const span = domainOf([
    ...points.map(({ time }) => time),
    ...instants.flatMap(({ low, high }) => [low, high]),
  ]);
  const lengths = domainOf([...points.map(({ value }) => value), 0], [0, 1e-3]);
  const units = { x: timeUnit(span[1] - span[0]), y: lengthUnit(lengths[1] - lengths[0]) };
  const x = {
    title: `time, ${units.x.symbol}`,
    domain: padded([span[0] * units.x.perSi, span[1] * units.x.perSi], 0.03),
  };
  return (
    <Figure
      title="Seal"
      keys={[{ mark: 'used', text: 'front of the film, with its standard uncertainty' }]}
      table={{
        columns: [
          'what',
          `time, ${units.x.symbol}`,
          `interval, ${units.x.symbol}`,
          `front and standard uncertainty, ${units.y.symbol}`,
        ],
        rows: [
          ...instantRows(instants, units.x).map((row) => [...row, '']),
          ...points.map(({ time, value, u }) => [
            'front',
            timeText(time, units.x),
            '',
            plusMinus(value, u, units.y),
          ]),
        ],
      }}
      chart={(width) => {
        const labels = placeLabels(instants, units.x, x.domain, width);
        return (
          <Chart
            label="Front of the seal's film against time"
            width={width}
            height={HEIGHT + headroomFor(labels)}
            headroom={headroomFor(labels)}
            x={x}
            y={{
              title: `film out of its rest position, ${units.y.symbol}`,
              domain: padded([lengths[0] * units.y.perSi, lengths[1] * units.y.perSi], 0.08),
            }}
            above={(field) => <InstantLabels field={field} labels={labels} unit={units.x} />}
          >
            {(field) => (
              <>
                <path class="plot-zero" d={`M${field.left} ${field.y(0)}H${field.right}`} />
                <Instants field={field} instants={instants} unit={units.x} />
                <Points field={field} points={points} units={units} />
              </>
            )}
          </Chart>
        );
      }}
    />
  );
}
