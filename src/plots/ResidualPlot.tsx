import { area } from 'd3';
import { showFixed } from '../text/show';
import { t } from '../text/text';
import { Chart, type Field } from './Chart';
import { domainOf, padded } from './domain';
import { Figure, type PlotKey } from './Figure';
import { pointKeys } from './keys';
import { type PlotPoint, Points, type Units } from './marks';
import type { ResidualPlotProps } from './props';
import { plusMinus, readingOf, timeText, useText } from './text';
import { lengthUnit, type ShownUnit, timeUnit } from './units';
import { usePointPicking } from './usePointPicking';

const HEIGHT = 190;
const RATIO_HEIGHT = 190;
/** Lines within which about 95 % of normal residuals fall. */
const LIMIT = 2;
const STANDARD_UNCERTAINTIES: ShownUnit = { symbol: 'u', perSi: 1 };

/** Measured minus fitted: as a length, and over its standard uncertainty. */
export function ResidualPlot({ points: given, currentFrame, onPickFrame }: ResidualPlotProps) {
  const points = given.map(({ residual, ...point }): PlotPoint => ({ ...point, value: residual }));
  const ratios = points.map((point) => ({ ...point, value: point.value / point.u, u: 1 }));
  // The scale is that of the used ones: a far outlier stands as an arrowhead at the edge.
  const fitted = points.filter(({ used }) => used);
  const bounds = fitted.flatMap(({ value, u }) => [value - u, value + u, -LIMIT * u, LIMIT * u]);
  const times = domainOf(points.map(({ time }) => time));
  const lengths = domainOf([...bounds, 0], [-1e-4, 1e-4]);
  const largest = Math.max(
    LIMIT + 1,
    ...ratios.filter(({ used }) => used).map(({ value }) => Math.abs(value)),
  );
  const units = { x: timeUnit(times[1] - times[0]), y: lengthUnit(lengths[1] - lengths[0]) };
  const ratioUnits = { x: units.x, y: STANDARD_UNCERTAINTIES };
  const picking = usePointPicking(points, units, onPickFrame);
  const ratioPicking = usePointPicking(ratios, ratioUnits, onPickFrame);
  const x = {
    title: t('plots.time', { unit: units.x.symbol }),
    domain: padded([times[0] * units.x.perSi, times[1] * units.x.perSi], 0.03),
  };
  const shared = { points, currentFrame: currentFrame ?? null };
  const keys: PlotKey[] = [
    ...pointKeys(points),
    { mark: 'band', text: t('plots.residuals.each', { limit: `${LIMIT}` }) },
    { mark: 'limit', text: `± ${LIMIT} u` },
  ];
  const pointed = picking.pointed ?? byFrame(points, ratioPicking.pointed);
  return (
    <Figure
      title={t('plots.residuals.title')}
      reading={readingOf(pointed, units)}
      keys={keys}
      table={{
        columns: [
          t('plots.frame'),
          t('plots.time', { unit: units.x.symbol }),
          t('plots.residuals.column', { unit: units.y.symbol }),
          t('plots.residuals.ratioColumn'),
          t('plots.inFit'),
        ],
        rows: points.map((point) => [
          String(point.frame),
          timeText(point.time, units.x),
          plusMinus(point.value, point.u, units.y),
          showFixed(point.value / point.u, 2),
          useText(point),
        ]),
      }}
      chart={(width) => (
        <>
          <Chart
            label={t('plots.residuals.label', { centres: `${points.length}` })}
            width={width}
            height={HEIGHT}
            x={x}
            y={{
              title: t('plots.residuals.y', { unit: units.y.symbol }),
              domain: padded([lengths[0] * units.y.perSi, lengths[1] * units.y.perSi], 0.08),
            }}
            bareX
            onPointer={picking.onPointer}
            onClick={picking.onClick}
          >
            {(field) => (
              <>
                <OwnBand field={field} points={fitted} units={units} />
                <Zero field={field} />
                <Points field={field} units={units} {...shared} />
              </>
            )}
          </Chart>
          <Chart
            label={t('plots.residuals.ratioLabel', { centres: `${points.length}` })}
            width={width}
            height={RATIO_HEIGHT}
            x={x}
            y={{
              title: t('plots.residuals.ratio'),
              domain: padded([-largest, largest], 0.05),
            }}
            onPointer={ratioPicking.onPointer}
            onClick={ratioPicking.onClick}
          >
            {(field) => (
              <>
                <Zero field={field} />
                {[-LIMIT, LIMIT].map((limit) => (
                  <path
                    key={limit}
                    class="plot-limit"
                    d={`M${field.left} ${field.y(limit)}H${field.right}`}
                  />
                ))}
                <Points field={field} units={ratioUnits} {...shared} points={ratios} bars={0} />
              </>
            )}
          </Chart>
        </>
      )}
    />
  );
}

const byFrame = (points: readonly PlotPoint[], of: PlotPoint | null): PlotPoint | null =>
  of && (points.find(({ frame }) => frame === of.frame) ?? null);

/** What each used centre's own uncertainty allows its residual. */
function OwnBand(props: {
  readonly field: Field;
  readonly points: readonly PlotPoint[];
  readonly units: Units;
}) {
  const { field, points, units } = props;
  const edge = (side: number) => (point: PlotPoint) =>
    field.y(side * LIMIT * point.u * units.y.perSi);
  const band = area<PlotPoint>()
    .x(({ time }) => field.x(time * units.x.perSi))
    .y0(edge(-1))
    .y1(edge(1));
  return <path class="plot-own-band" d={band(points) ?? ''} />;
}

const Zero = ({ field }: { readonly field: Field }) => (
  <path class="plot-zero" d={`M${field.left} ${field.y(0)}H${field.right}`} />
);
