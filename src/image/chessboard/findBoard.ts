import type { GreyFrame } from '../../core/frame';
import { failure, type Outcome, success } from '../../core/reason';
import { median } from '../../core/statistics';
import { type Blurred, gaussian } from '../soften';
import { assembleGrid, type GridCorner, straightOnes } from './grid';
import { refineCorner } from './refine';
import { findSaddles, type Saddle } from './saddles';

/** Inner corners of a chessboard, where known beforehand. */
export interface BoardSize {
  readonly columns: number;
  readonly rows: number;
}

/** The inner corners of a chessboard as one frame shows them; those hidden or beyond the border are missing. */
export interface BoardView extends BoardSize {
  readonly frame: number;
  /** Columns and rows from 0. Which corner is the first is arbitrary. */
  readonly corners: readonly GridCorner[];
}

const FEWEST_CORNERS = 12;
/** Half width of the window a corner is refined in, as a share of the fields' size, and its limits, px. */
const WINDOW = 0.35;
const WINDOW_LIMITS = [3, 12] as const;
const FINE_SIGMA = 0.7;

/**
 * Finds a chessboard's inner corners in a frame and places them to sub-pixel. The count need not be told; where it
 * is, what lies beyond it is left out. A board seen in part gives the corners it shows.
 * Failure `noBoard`: fewer than 12 corners in at least 3 rows and columns.
 */
export function findBoard(frame: GreyFrame, size: BoardSize | null): Outcome<BoardView> {
  const picture = gaussian(frame, FINE_SIGMA);
  const rough = findSaddles(frame).flatMap((saddle) => at(saddle, picture, WINDOW_LIMITS[0] + 1));
  const grid = assembleGrid(apart(rough));
  const window = Math.min(WINDOW_LIMITS[1], Math.max(WINDOW_LIMITS[0], WINDOW * fieldSize(grid)));
  const fine = grid.flatMap((corner) => at(corner, picture, window));
  const kept = trimmed(straightOnes(fine), size);
  const columns = 1 + Math.max(-1, ...kept.map(({ column }) => column));
  const rows = 1 + Math.max(-1, ...kept.map(({ row }) => row));
  if (kept.length < FEWEST_CORNERS || Math.min(columns, rows) < 3) {
    return failure(
      'noBoard',
      `No chessboard stands out in frame ${frame.index}.`,
      'Show the whole board, lit evenly and in focus, its fields at least 10 pixels wide.',
      { frame: frame.index },
    );
  }
  return success({ frame: frame.index, columns, rows, corners: kept });
}

/** The corner or saddle at its refined place; none where it has none. */
function at<T extends { readonly at: Saddle['at'] }>(
  one: T,
  picture: Blurred,
  window: number,
): T[] {
  const place = refineCorner(picture, one.at, window);
  return place === null ? [] : [{ ...one, at: place }];
}

/** Without saddles that came to lie on a stronger one. */
const apart = (saddles: readonly Saddle[]): Saddle[] =>
  saddles.filter((one, i) =>
    saddles
      .slice(0, i)
      .every((other) => Math.hypot(one.at[0] - other.at[0], one.at[1] - other.at[1]) > 3),
  );

/** Median distance of neighbours along a row or column, the shorter of the two ways. */
function fieldSize(grid: readonly GridCorner[]): number {
  const places = new Map(grid.map((corner) => [`${corner.column},${corner.row}`, corner.at]));
  const steps = (dc: number, dr: number): number[] =>
    grid.flatMap(({ column, row, at: [x, y] }) => {
      const next = places.get(`${column + dc},${row + dr}`);
      return next === undefined ? [] : [Math.hypot(next[0] - x, next[1] - y)];
    });
  const ways = [steps(1, 0), steps(0, 1)].filter((lengths) => lengths.length > 0);
  return ways.length === 0 ? 0 : Math.min(...ways.map(median));
}

/** Counted from 0, and where the size is known the part of that size, either way round, which holds most corners. */
function trimmed(corners: readonly GridCorner[], size: BoardSize | null): GridCorner[] {
  if (corners.length === 0) return [];
  const from = (pick: (corner: GridCorner) => number) => Math.min(...corners.map(pick));
  const counted = (list: readonly GridCorner[], column: number, row: number): GridCorner[] =>
    list.map((corner) => ({ ...corner, column: corner.column - column, row: corner.row - row }));
  const all = counted(
    corners,
    from(({ column }) => column),
    from(({ row }) => row),
  );
  if (size === null) return all;
  let best: GridCorner[] = [];
  for (const [columns, rows] of [
    [size.columns, size.rows],
    [size.rows, size.columns],
  ] as const) {
    const last = (pick: (corner: GridCorner) => number) => Math.max(...all.map(pick));
    for (let c = 0; c <= Math.max(0, last((k) => k.column) + 1 - columns); c++) {
      for (let r = 0; r <= Math.max(0, last((k) => k.row) + 1 - rows); r++) {
        const part = all.filter(
          ({ column, row }) => column >= c && column < c + columns && row >= r && row < r + rows,
        );
        if (part.length > best.length) best = counted(part, c, r);
      }
    }
  }
  return best;
}
