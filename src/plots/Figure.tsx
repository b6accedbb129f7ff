import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import type { LookName } from './looks';
import { useWidth } from './useWidth';

interface FigureProps {
  readonly title: string;
  /** What the pointer is on; stands beside the title. */
  readonly reading?: string | null;
  readonly keys: readonly PlotKey[];
  readonly table: PlotTable;
  chart(width: number): ComponentChildren;
}

export interface PlotKey {
  readonly mark: keyof typeof KEY_MARKS;
  readonly text: string;
}

export interface PlotTable {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Title, drawing, key, and the same numbers as a table for those who cannot see the drawing. */
export function Figure({ title, reading, keys, table, chart }: FigureProps) {
  const body = useRef<HTMLDivElement>(null);
  const width = useWidth(body);
  return (
    <figure class="plot">
      <figcaption>
        <strong>{title}</strong>
        <span class="plot-reading">{reading}</span>
      </figcaption>
      <div ref={body}>{width > 0 && chart(width)}</div>
      {keys.length > 0 && (
        <ul class="plot-keys">
          {keys.map(({ mark, text }) => (
            <li key={text}>
              <svg width="22" height="12" aria-hidden="true">
                {KEY_MARKS[mark]}
              </svg>
              {text}
            </li>
          ))}
        </ul>
      )}
      <div class="hidden-text">
        <table>
          <caption>{title}</caption>
          <thead>
            <tr>
              {table.columns.map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.map((row, index) => (
              <tr key={index}>
                {row.map((cell, column) => (
                  <td key={table.columns[column] ?? column}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </figure>
  );
}

/** A line in one of the looks, with its band. */
const lookMark = (look: LookName) => (
  <g class={`plot-look plot-look-${look}`}>
    <rect y="1" width="22" height="10" />
    <path d="M0 6h22" />
  </g>
);

const KEY_MARKS = {
  used: <circle class="plot-used" cx="11" cy="6" r="3" />,
  manual: <path class="plot-manual" d="M8 3h6v6h-6z" />,
  refused: <path class="plot-refused" d="M8 3l6 6m0 -6l-6 6" />,
  curve: (
    <>
      <rect class="plot-band" y="1" width="22" height="10" />
      <path class="plot-curve" d="M0 6h22" />
    </>
  ),
  zone: <rect class="plot-zone" width="22" height="12" />,
  limit: <path class="plot-limit" d="M0 6h22" />,
  density: <path class="plot-density" d="M0 11C7 11 7 1 11 1S15 11 22 11z" />,
  band: <rect class="plot-own-band" y="1" width="22" height="10" />,
  solid: lookMark('solid'),
  dashes: lookMark('dashes'),
  dots: lookMark('dots'),
  dotDash: lookMark('dotDash'),
  measured: (
    <g class="plot-exit">
      <path d="M11 0V12" />
      <path class="plot-exit-mark" d="M11 2l4 4l-4 4l-4 -4z" />
    </g>
  ),
  opening: (
    <g class="plot-instant plot-instant-burst">
      <rect x="4" width="14" height="12" />
      <path d="M11 0V12" />
    </g>
  ),
  planned: <circle class="plot-planned" cx="11" cy="6" r="5" />,
  impossible: (
    <g class="plot-impossible">
      <rect width="22" height="12" />
      <path d="M0 12L22 0" />
    </g>
  ),
  ball: <path class="plot-way" d="M0 6h22" />,
  shock: <circle class="plot-shock" cx="11" cy="6" r="3" />,
} satisfies Readonly<Record<string, ComponentChildren>>;
