import type { TimelineEvent } from '../core/timeline';
import { showAs, showPercent, showQuantity, showRange } from '../text/show';
import { t } from '../text/text';
import { EventMark } from './EventMark';
import { Figure } from './Figure';
import type { TimelineProps } from './props';
import { layOutLabels, timeScale } from './timelineLayout';
import { timeUnit } from './units';

/** CSS px. */
const STRIP = 34;
const BAR = 14;
const ROW = 20;
const FIRST_ROW = 30;
const AXIS = 40;
const TITLE = 17;
/** From here on a time is stated in milliseconds, s. */
const LONG_S = 0.001;

/** 'seal opens −295 ± 51 µs' */
const stated = ({ time, low, high }: TimelineEvent): string =>
  showQuantity(
    { value: time, u: (high - low) / 2 },
    'time',
    Math.max(Math.abs(time), (high - low) / 2) < LONG_S ? 'µs' : 'ms',
  );

/** The moments of the shot along one strip, each with its coverage interval and a label of its own row. */
export function Timeline({ events, from, coverage }: TimelineProps) {
  const ends = events.flatMap(({ low, high }) => [low, high]);
  const unit = timeUnit(Math.max(...ends) - Math.min(...ends));
  const share = showPercent(coverage);
  return (
    <Figure
      title={t('plots.timeline.title')}
      reading={t('plots.timeline.bars', { share })}
      keys={[]}
      table={{
        columns: [
          t('plots.timeline.event'),
          t('plots.timeline.time', { from }),
          t('plots.percentInterval', { percent: share, unit: unit.symbol }),
        ],
        rows: events.map((event) => [
          event.label,
          stated(event),
          showRange((event.low * unit.perSi).toFixed(3), (event.high * unit.perSi).toFixed(3)),
        ]),
      }}
      chart={(width) => {
        const { scale, ticks, compressed } = timeScale(events, unit, width);
        const at = (time: number) => scale(time * unit.perSi);
        const labels = layOutLabels(
          events.map((event) => ({
            event,
            at: at(event.time),
            text: `${event.label} ${stated(event)}`,
          })),
          width,
        );
        const foot = STRIP + FIRST_ROW + labels.length * ROW;
        const height = foot + AXIS + (compressed ? TITLE : 0);
        return (
          <svg
            class="plot-chart"
            width={width}
            height={height}
            viewBox={`0 0 ${width} ${height}`}
            role="img"
            aria-label={t('plots.timeline.label', { events: `${events.length}` })}
          >
            <g class="plot-axis plot-axis-x">
              {ticks.map((tick) => (
                <g key={tick} transform={`translate(${scale(tick)} 0)`}>
                  <path d={`M0 ${STRIP}V${foot + 5}`} />
                  <text y={foot + 18}>{showAs(String(tick).replace('-', '\u2212'))}</text>
                </g>
              ))}
            </g>
            <path class="plot-frame" d={`M0 ${STRIP}H${width}`} />
            {labels.map(({ event, at: x, row }) => (
              <g key={event.kind} class={`plot-instant plot-instant-${event.kind}`}>
                <rect
                  x={at(event.low)}
                  y={STRIP - BAR}
                  width={Math.max(at(event.high) - at(event.low), 1)}
                  height={2 * BAR}
                />
                <path d={`M${x} ${STRIP}V${STRIP + FIRST_ROW + row * ROW}`} />
              </g>
            ))}
            {labels.map(({ event, at: x, row, anchor, textAt, text }) => (
              <g key={event.kind} class={`plot-instant plot-instant-${event.kind}`}>
                <EventMark kind={event.kind} x={x} y={STRIP} />
                <text
                  class="plot-event-label"
                  x={textAt}
                  y={STRIP + FIRST_ROW + row * ROW}
                  text-anchor={anchor}
                >
                  {text}
                </text>
              </g>
            ))}
            <text class="plot-title plot-title-x" x={width} y={foot + AXIS - 5}>
              {t('plots.timeline.axis', { from, unit: unit.symbol })}
            </text>
            {compressed && (
              <text class="plot-title plot-title-x" x={width} y={foot + AXIS - 5 + TITLE}>
                {t('plots.timeline.compressed')}
              </text>
            )}
          </svg>
        );
      }}
    />
  );
}
