import { line, type ScaleContinuousNumeric, scaleLinear, scaleLog } from 'd3';
import type { ReportPlot } from '../types';

const WIDTH = 640;
const HEIGHT = 380;
const BOX = { left: 74, right: 470, top: 40, bottom: 322 } as const;
/** Colours of Okabe and Ito (jfly.uni-koeln.de/color, 2008) that stand out on white and on black. */
const COLOURS = ['#0072b2', '#d55e00', '#009e73', '#cc79a7', '#e69f00', '#56b4e9'] as const;
/** Marker outlines around 0, radius 4. */
const MARKERS = [
  'M-4,0a4,4 0 1,0 8,0a4,4 0 1,0 -8,0Z',
  'M-4,-4H4V4H-4Z',
  'M0,-5L5,4H-5Z',
  'M0,-5.5L5.5,0L0,5.5L-5.5,0Z',
  'M0,5L5,-4H-5Z',
  'M-5,-2H-2V-5H2V-2H5V2H2V5H-2V2H-5Z',
] as const;
const DASHES = ['', '6 3', '2 3', '8 3 2 3', '1 4', '10 4'] as const;
/** Grey that can be read on white and on black. */
const STYLE =
  'text{font:13px system-ui,sans-serif;fill:#767676}.title{font-size:14px;font-weight:600}.frame,.tick{stroke:#767676;fill:none}.limit{stroke:#767676;stroke-dasharray:4 4}.series{fill:none;stroke-width:1.6}';

type Scale = ScaleContinuousNumeric<number, number>;

/** A plot as an SVG file, to stand on light or dark. Bars reach one standard uncertainty each way. */
export function drawPlot(plot: ReportPlot): string {
  const points = plot.series.flatMap((series) => series.points);
  const x = scaleOf(
    points.map((p) => p.x),
    plot.x.log === true,
    [BOX.left + 14, BOX.right - 14],
  );
  const y = scaleOf(
    [...points.flatMap((p) => [p.y, ...reach(p, plot.y.log === true)]), ...plot.limits],
    plot.y.log === true,
    [BOX.bottom - 8, BOX.top + 8],
  );
  const middle = (BOX.left + BOX.right) / 2;
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" aria-label="${escaped(plot.title)}">`,
    `<style>${STYLE}</style>`,
    `<text class="title" x="${BOX.left}" y="24">${escaped(plot.title)}</text>`,
    `<path class="frame" d="M${BOX.left},${BOX.top}V${BOX.bottom}H${BOX.right}"/>`,
    ...ticks(x, plot.x.log === true ? points.map((p) => p.x) : null).map(
      (t) =>
        `<path class="tick" d="M${at(x(t))},${BOX.bottom}v5"/><text x="${at(x(t))}" y="${BOX.bottom + 20}" text-anchor="middle">${number(t)}</text>`,
    ),
    ...ticks(y, null).map(
      (t) =>
        `<path class="tick" d="M${BOX.left},${at(y(t))}h-5"/><text x="${BOX.left - 9}" y="${at(y(t) + 4)}" text-anchor="end">${number(t)}</text>`,
    ),
    `<text x="${middle}" y="${BOX.bottom + 44}" text-anchor="middle">${escaped(plot.x.label)}</text>`,
    `<text transform="translate(18,${(BOX.top + BOX.bottom) / 2})rotate(-90)" text-anchor="middle">${escaped(plot.y.label)}</text>`,
    ...plot.limits.map(
      (limit) => `<path class="limit" d="M${BOX.left},${at(y(limit))}H${BOX.right}"/>`,
    ),
    ...plot.series.map((series, i) => drawSeries(series, i, x, y, plot.y.log === true)),
    '</svg>',
  ].join('\n')}\n`;
}

function drawSeries(
  { name, points }: ReportPlot['series'][number],
  i: number,
  x: Scale,
  y: Scale,
  log: boolean,
): string {
  const colour = COLOURS[i % COLOURS.length] as string;
  const marker = MARKERS[i % MARKERS.length] as string;
  const dash = DASHES[i % DASHES.length] as string;
  const way = line<{ x: number; y: number }>(
    (p) => x(p.x),
    (p) => y(p.y),
  ).digits(1)(points);
  const bars = points
    .map((p) => {
      const [low, high] = reach(p, log);
      return low === undefined || high === undefined
        ? ''
        : `M${at(x(p.x))},${at(y(low))}V${at(y(high))}`;
    })
    .join('');
  const row = BOX.top + 14 + 20 * i;
  const key = BOX.right + 16;
  return [
    `<g stroke="${colour}">`,
    `<path class="series" stroke-dasharray="${dash}" d="${way ?? ''}"/>`,
    bars === '' ? '' : `<path class="series" d="${bars}"/>`,
    ...points.map(
      (p) =>
        `<path fill="${colour}" transform="translate(${at(x(p.x))},${at(y(p.y))})" d="${marker}"/>`,
    ),
    `<path class="series" stroke-dasharray="${dash}" d="M${key},${row}h28"/>`,
    `<path fill="${colour}" transform="translate(${key + 14},${row})" d="${marker}"/>`,
    '</g>',
    `<text x="${key + 36}" y="${row + 4}">${escaped(name)}</text>`,
  ].join('');
}

/** Ends of a point's bar; none below zero where the scale is logarithmic. */
function reach({ y, u }: { y: number; u?: number }, log: boolean): number[] {
  return u === undefined || (log && u >= y) ? [] : [y - u, y + u];
}

function scaleOf(values: readonly number[], log: boolean, range: [number, number]): Scale {
  const low = Math.min(...values);
  const high = Math.max(...values);
  if (log) return scaleLog([low, Math.max(high, 1.01 * low)], range);
  return scaleLinear([low, high === low ? low + 1 : high], range).nice(5);
}

/** Places of ticks: those of the points where there are few, else the scale's own. */
function ticks(scale: Scale, points: readonly number[] | null): number[] {
  const own = [...new Set(points ?? [])].sort((a, b) => a - b);
  if (own.length > 0 && own.length <= 8) return own;
  const all = scale.ticks(5);
  // A logarithmic scale gives all nine of a decade.
  return all.length <= 8 ? all : all.filter((t) => /^[125]/.test(t.toExponential()));
}

const at = (place: number): string => place.toFixed(1);
const number = (value: number): string => String(Number(value.toPrecision(3)));
const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');
