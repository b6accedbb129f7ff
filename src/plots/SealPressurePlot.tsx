import { line } from 'd3';
import { showRange } from '../text/show';
import { t } from '../text/text';
import { Chart, type Field } from './Chart';
import { domainOf, padded } from './domain';
import { Figure, type PlotKey } from './Figure';
import type { SealPressureCurve, SealPressurePlotProps } from './props';
import { timeText } from './text';
import { type ShownUnit, timeUnit } from './units';

/** CSS px. */
const HEIGHT = 280;
const FOOT = 4;
const KILOPASCAL: ShownUnit = { symbol: 'kPa', perSi: 1e-3 };
/** Shown before the exit, in leads. */
const LEADS_SHOWN = 5;

/** Pressure inside the muzzle seal over the last part of the launch, when it opens, and when the film says it did. */
export function SealPressurePlot({ curves, opensAt, film }: SealPressurePlotProps) {
  const leads = [...curves.map(({ lead }) => lead), ...(film === null ? [] : film.interval)];
  const earliest = Math.min(...curves.map(({ times }) => times[0] ?? 0));
  const start = Math.max(earliest, -LEADS_SHOWN * Math.max(...leads));
  const unit = timeUnit(-start);
  const [, most] = domainOf([opensAt, ...curves.flatMap((curve) => pressuresIn(curve, start))]);
  const after = Math.min(0, ...leads);
  const keys: PlotKey[] = curves.map(({ name, look }) => ({
    mark: look,
    text: name,
  }));
  keys.push({ mark: 'limit', text: t('plots.sealPressure.limit') });
  if (film !== null) keys.push({ mark: 'opening', text: t('plots.sealPressure.opening') });
  return (
    <Figure
      title={t('plots.sealPressure.title')}
      keys={keys}
      table={{
        columns: [
          t('plots.what'),
          t('plots.sealPressure.column', { unit: unit.symbol }),
          t('plots.interval', { unit: unit.symbol }),
        ],
        rows: [
          ...(film === null
            ? []
            : [leadRow(t('plots.sealPressure.film'), film.lead, film.interval, unit)]),
          ...curves.map(({ name, lead, leadInterval }) => leadRow(name, lead, leadInterval, unit)),
        ],
      }}
      chart={(width) => (
        <Chart
          label={t('plots.sealPressure.label')}
          width={width}
          height={HEIGHT}
          x={{
            title: t('plots.sealPressure.x', { unit: unit.symbol }),
            domain: padded([start * unit.perSi, -after * unit.perSi], 0.03),
          }}
          y={{ title: t('plots.sealPressure.y'), domain: [0, most * KILOPASCAL.perSi * 1.1] }}
        >
          {(field) => (
            <>
              {film !== null && <FilmOpening field={field} film={film} unit={unit} />}
              <path
                class="plot-limit"
                d={`M${field.left} ${field.y(opensAt * KILOPASCAL.perSi)}H${field.right}`}
              />
              {curves.map((curve) => (
                <Pressure key={curve.name} field={field} curve={curve} unit={unit} />
              ))}
            </>
          )}
        </Chart>
      )}
    />
  );
}

const leadRow = (
  name: string,
  lead: number,
  [low, high]: readonly [number, number],
  unit: ShownUnit,
) => [name, timeText(lead, unit), showRange(timeText(low, unit), timeText(high, unit))];

const pressuresIn = ({ times, pressures }: SealPressureCurve, start: number): number[] =>
  pressures.filter((_, i) => (times[i] as number) >= start);

function FilmOpening(props: {
  readonly field: Field;
  readonly film: NonNullable<SealPressurePlotProps['film']>;
  readonly unit: ShownUnit;
}) {
  const { field, film, unit } = props;
  const place = (lead: number) => field.x(-lead * unit.perSi);
  const [right, left] = [place(film.interval[0]), place(film.interval[1])];
  return (
    <g class="plot-instant plot-instant-burst">
      <rect x={left} y={field.top} width={right - left} height={field.bottom - field.top} />
      <path d={`M${place(film.lead)} ${field.top}V${field.bottom}`} />
    </g>
  );
}

/** The curve, and at the foot of the field where it opens, as wide as that is known. */
function Pressure(props: {
  readonly field: Field;
  readonly curve: SealPressureCurve;
  readonly unit: ShownUnit;
}) {
  const { field, curve, unit } = props;
  const place = (lead: number) => field.x(-lead * unit.perSi);
  const path = line<number>()
    .x((i) => field.x((curve.times[i] as number) * unit.perSi))
    .y((i) => field.y((curve.pressures[i] as number) * KILOPASCAL.perSi));
  const [right, left] = [place(curve.leadInterval[0]), place(curve.leadInterval[1])];
  const middle = place(curve.lead);
  return (
    <g class={`plot-look plot-look-${curve.look}`}>
      <path d={path(curve.times.map((_, i) => i)) ?? ''} />
      <rect x={left} y={field.bottom - 3 * FOOT} width={right - left} height={3 * FOOT} />
      <path
        class="plot-look-foot"
        d={`M${middle} ${field.bottom - 3 * FOOT}l${FOOT} ${3 * FOOT}h${-2 * FOOT}z`}
      />
    </g>
  );
}
