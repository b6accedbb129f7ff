import { area } from 'd3';
import type { Posterior } from '../shot/result';
import { showRange } from '../text/show';
import { t } from '../text/text';
import { Chart, type Field } from './Chart';
import { domainOf, padded } from './domain';
import { Instants } from './Instants';
import type { PlotInstant, SealPlotProps } from './props';
import { timeText } from './text';
import { type ShownUnit, timeUnit } from './units';

interface DensityProps {
  readonly field: Field;
  readonly posterior: Posterior;
  readonly unit: ShownUnit;
  /** Of the highest place, as a share of the field's height. */
  readonly height: number;
}

/** A probability density as a shaded curve that stands on the time axis. */
export function Density({ field, posterior, unit, height }: DensityProps) {
  const { times, density } = posterior;
  const [, most] = domainOf([...density, 0]);
  if (!(most > 0)) return null;
  const reach = (height * (field.bottom - field.top)) / most;
  const shape = area<number>()
    .x((i) => field.x((times[i] as number) * unit.perSi))
    .y0(field.bottom)
    .y1((i) => field.bottom - (density[i] as number) * reach);
  return <path class="plot-density" d={shape(times.map((_, i) => i)) ?? ''} />;
}

/** CSS px. */
const HEIGHT = 150;
/** Of the field's height: room is left over the highest place. */
const HIGHEST = 0.9;

interface OpeningChartProps {
  readonly width: number;
  readonly posterior: Posterior;
  readonly instants: readonly PlotInstant[];
}

/** The moments around the opening, enlarged. */
export function OpeningChart({ width, posterior, instants }: OpeningChartProps) {
  const span = domainOf([
    ...likely(posterior),
    ...instants.flatMap(({ low, high }) => [low, high]),
  ]);
  const unit = timeUnit(span[1] - span[0]);
  const [, most] = domainOf([...posterior.density, 0]);
  return (
    <Chart
      label={t('plots.seal.openingLabel')}
      width={width}
      height={HEIGHT}
      x={{
        title: t('plots.seal.openingX', { unit: unit.symbol }),
        domain: padded([span[0] * unit.perSi, span[1] * unit.perSi], 0.1),
      }}
      y={{
        title: t('plots.seal.openingY', { unit: unit.symbol }),
        domain: [0, most / unit.perSi / HIGHEST],
      }}
    >
      {(field) => (
        <>
          <Instants field={field} instants={instants} unit={unit} />
          <Density field={field} posterior={posterior} unit={unit} height={HIGHEST} />
        </>
      )}
    </Chart>
  );
}

/** Less than this of the highest density is not worth room on the axis. */
const VISIBLE = 0.005;

function likely({ times, density }: Posterior): readonly number[] {
  const [, most] = domainOf([...density, 0]);
  return times.filter((_, i) => (density[i] as number) > VISIBLE * most);
}

interface BoundsProps {
  readonly field: Field;
  readonly bounds: NonNullable<SealPlotProps['bounds']>;
  readonly unit: ShownUnit;
}

/** The time in which the opening must lie; open to the field's edge where there is no bound. */
export function Bounds({ field, bounds: [earliest, latest], unit }: BoundsProps) {
  const within = (time: number) =>
    Math.min(Math.max(field.x(time * unit.perSi), field.left), field.right);
  const from = earliest === null ? field.left : within(earliest);
  const to = latest === null ? field.right : within(latest);
  const edges = [earliest === null ? null : from, latest === null ? null : to];
  return (
    <>
      <rect
        class="plot-zone plot-bounds"
        x={from}
        y={field.top}
        width={Math.max(to - from, 0)}
        height={field.bottom - field.top}
      />
      {edges.map(
        (edge) =>
          edge !== null && (
            <path key={edge} class="plot-limit" d={`M${edge} ${field.top}V${field.bottom}`} />
          ),
      )}
    </>
  );
}

/** '5.1 to 5.3', 'after 5.1' or 'before 5.3'. */
export function boundsText(
  [earliest, latest]: NonNullable<SealPlotProps['bounds']>,
  unit: ShownUnit,
): string {
  if (earliest === null)
    return latest === null ? '' : t('plots.before', { time: timeText(latest, unit) });
  if (latest === null) return t('plots.after', { time: timeText(earliest, unit) });
  return showRange(timeText(earliest, unit), timeText(latest, unit));
}
