import { t } from '../text/text';
import { Chart } from './Chart';
import { Bounds, boundsText, Density, OpeningChart } from './Density';
import { domainOf, padded } from './domain';
import { Figure, type PlotKey } from './Figure';
import { headroomFor, InstantLabels, Instants, placeLabels } from './Instants';
import { type PlotPoint, Points } from './marks';
import type { SealPlotProps } from './props';
import { instantRows, plusMinus, timeText } from './text';
import { lengthUnit, timeUnit } from './units';

/** Without the room for labels, CSS px. */
const HEIGHT = 250;

/** Share of the time from the bulge to the last instant that is shown before and after. */
const MARGIN = 0.4;

/** Height of the density over the time axis, as a share of the field. */
const DENSITY_SHARE = 0.4;

/** How far the seal's film stands out, against time, around the instants of the shot. */
export function SealPlot(props: SealPlotProps) {
  const { times, front, frontU, instants, posterior, bounds } = props;
  const opening = instants.find(({ kind }) => kind === 'burst')?.time ?? Infinity;
  const bulges = opening < Infinity && instants.some(({ kind }) => kind === 'onset');
  const ends = instants.flatMap(({ low, high }) => [low, high]);
  const [start, end] = bulges
    ? padded(domainOf(ends), MARGIN)
    : domainOf([...Array.from(times), ...ends], [0, 1]);
  const points = Array.from({ length: times.length }, (_, index): PlotPoint => {
    const time = times[index] as number;
    const value = front[index] as number;
    // Once torn, what stands out farthest is no longer a bulge.
    const whole = time <= opening;
    return { frame: index, time, value, u: frontU[index] as number, used: whole, manual: false };
  }).filter(({ time }) => time >= start && time <= end);
  const bulge = points.filter(({ used }) => used);
  const lengths = domainOf([...bulge.map(({ value }) => value), 0], [0, 1e-3]);
  const units = { x: timeUnit(end - start), y: lengthUnit(lengths[1] - lengths[0]) };
  const x = {
    title: t('plots.time', { unit: units.x.symbol }),
    domain: padded([start * units.x.perSi, end * units.x.perSi], 0.03),
  };
  const keys: PlotKey[] = [{ mark: 'used', text: t('plots.seal.front') }];
  if (bulge.length < points.length) keys.push({ mark: 'refused', text: t('plots.seal.torn') });
  if (posterior !== null) keys.push({ mark: 'density', text: t('plots.seal.density') });
  const bounded = bounds?.some((bound) => bound !== null) ? bounds : null;
  if (bounded !== null) keys.push({ mark: 'zone', text: t('plots.seal.bounds') });
  return (
    <Figure
      title={t('plots.seal.title')}
      keys={keys}
      table={{
        columns: [
          t('plots.what'),
          t('plots.time', { unit: units.x.symbol }),
          t('plots.interval', { unit: units.x.symbol }),
          t('plots.seal.column', { unit: units.y.symbol }),
        ],
        rows: [
          ...instantRows(instants, units.x).map((row) => [...row, '']),
          ...(bounded === null
            ? []
            : [[t('plots.seal.within'), '', boundsText(bounded, units.x), '']]),
          ...points.map(({ time, value, u, used }) => [
            t(used ? 'plots.seal.frontOf' : 'plots.seal.frontTorn'),
            timeText(time, units.x),
            '',
            plusMinus(value, u, units.y),
          ]),
        ],
      }}
      chart={(width) => {
        const labels = placeLabels(instants, units.x, x.domain, width);
        return (
          <>
            <Chart
              label={t('plots.seal.label')}
              width={width}
              height={HEIGHT + headroomFor(labels)}
              headroom={headroomFor(labels)}
              x={x}
              y={{
                title: t('plots.seal.y', { unit: units.y.symbol }),
                domain: padded([lengths[0] * units.y.perSi, lengths[1] * units.y.perSi], 0.08),
              }}
              above={(field) => <InstantLabels field={field} labels={labels} unit={units.x} />}
            >
              {(field) => (
                <>
                  <path class="plot-zero" d={`M${field.left} ${field.y(0)}H${field.right}`} />
                  {bounded !== null && <Bounds field={field} bounds={bounded} unit={units.x} />}
                  <Instants field={field} instants={instants} unit={units.x} />
                  {posterior !== null && (
                    <Density
                      field={field}
                      posterior={posterior}
                      unit={units.x}
                      height={DENSITY_SHARE}
                    />
                  )}
                  <Points field={field} points={points} units={units} />
                </>
              )}
            </Chart>
            {posterior !== null && (
              <OpeningChart
                width={width}
                posterior={posterior}
                instants={instants.filter(({ kind }) => kind === 'burst')}
              />
            )}
          </>
        );
      }}
    />
  );
}
