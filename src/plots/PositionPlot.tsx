import { t } from '../text/text';
import { Chart } from './Chart';
import { bandBounds, domainOf, padded } from './domain';
import { Figure, type PlotKey } from './Figure';
import { headroomFor, InstantLabels, Instants, placeLabels } from './Instants';
import { pointKeys } from './keys';
import { Curve, type PlotPoint, Points } from './marks';
import type { PositionPlotProps } from './props';
import { bandText, plusMinus, readingOf, timeText, useText } from './text';
import { lengthUnit, timeUnit } from './units';
import { usePointPicking } from './usePointPicking';

/** Without the room for labels, CSS px. */
const HEIGHT = 250;

/** Distance from the muzzle plane against time. */
export function PositionPlot(props: PositionPlotProps) {
  const { curve, instants, zone } = props;
  const points = props.positions.flatMap(({ frame, time, s, us, used, manual }): PlotPoint[] =>
    s === null || us === null ? [] : [{ frame, time, value: s, u: us, used, manual }],
  );
  const times = domainOf([
    ...points.map(({ time }) => time),
    ...instants.map(({ time }) => time),
    ...Array.from(curve?.times ?? []),
  ]);
  const lengths = domainOf([
    ...points.map(({ value }) => value),
    ...(curve === null ? [] : bandBounds(curve)),
    0,
  ]);
  const units = { x: timeUnit(times[1] - times[0]), y: lengthUnit(lengths[1] - lengths[0]) };
  const picking = usePointPicking(points, units, props.onPickFrame);
  const x = {
    title: t('plots.time', { unit: units.x.symbol }),
    domain: padded([times[0] * units.x.perSi, times[1] * units.x.perSi], 0.03),
  };
  const y = {
    title: t('plots.position.y', { unit: units.y.symbol }),
    domain: padded([lengths[0] * units.y.perSi, lengths[1] * units.y.perSi], 0.06),
  };
  const keys: PlotKey[] = pointKeys(points);
  if (curve !== null) keys.push({ mark: 'curve', text: bandText(curve) });
  if (zone !== null) keys.push({ mark: 'zone', text: t('plots.position.zone') });
  return (
    <Figure
      title={t('plots.position.title')}
      reading={readingOf(picking.pointed, units)}
      keys={keys}
      table={{
        columns: [
          t('plots.frame'),
          t('plots.time', { unit: units.x.symbol }),
          t('plots.position.column', { unit: units.y.symbol }),
          t('plots.inFit'),
        ],
        rows: points.map((point) => [
          String(point.frame),
          timeText(point.time, units.x),
          plusMinus(point.value, point.u, units.y),
          useText(point),
        ]),
      }}
      chart={(width) => {
        const labels = placeLabels(instants, units.x, x.domain, width);
        return (
          <Chart
            label={t('plots.position.label', { centres: `${points.length}` })}
            width={width}
            height={HEIGHT + headroomFor(labels)}
            headroom={headroomFor(labels)}
            x={x}
            y={y}
            onPointer={picking.onPointer}
            onClick={picking.onClick}
            above={(field) => <InstantLabels field={field} labels={labels} unit={units.x} />}
          >
            {(field) => (
              <>
                {zone !== null && (
                  <rect
                    class="plot-zone"
                    x={field.left}
                    width={field.right - field.left}
                    y={field.y(zone.to * units.y.perSi)}
                    height={field.y(zone.from * units.y.perSi) - field.y(zone.to * units.y.perSi)}
                  />
                )}
                <path class="plot-zero" d={`M${field.left} ${field.y(0)}H${field.right}`} />
                <Instants field={field} instants={instants} unit={units.x} />
                <Points
                  field={field}
                  points={points}
                  units={units}
                  currentFrame={props.currentFrame ?? null}
                />
                {curve !== null && <Curve field={field} curve={curve} units={units} />}
              </>
            )}
          </Chart>
        );
      }}
    />
  );
}
