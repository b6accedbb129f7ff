import type { ImagePoint } from '../../core/units';
import { betweenLines, type Saddle, turn } from './saddles';

/** A saddle with its place on the board, counted from an arbitrary one. */
export interface GridCorner {
  readonly column: number;
  readonly row: number;
  readonly at: ImagePoint;
}

/** How far from straight on the next corner may lie: angle, and share of the step expected. */
const AIM = (25 * Math.PI) / 180;
const STRAY = 0.35;
/** Lines of neighbours agree within this angle. */
const ALIKE = (22 * Math.PI) / 180;
const CLOSEST = 5;
/** A first step is at most this many times as long as one already known beside it. */
const FARTHEST = 2.5;
/** A corner midway between two neighbours lies this near their middle, share of half their distance. */
const BENT = 0.25;

type Vector = readonly [number, number];
/** Towards the next column, the next row, and back. */
const WAYS: readonly Vector[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

interface Placed {
  readonly node: number;
  /** Directions of columns and rows here, unit vectors. */
  readonly axes: readonly [Vector, Vector];
}

/**
 * The largest board that the saddles form. Grown from one saddle to the next along its lines: across an edge
 * between fields the line that rises at one corner falls at the next, which keeps strays and other patterns out.
 * Columns and rows turn the way x and y do, so the board is never seen mirrored.
 */
export function assembleGrid(saddles: readonly Saddle[]): GridCorner[] {
  const taken = new Set<number>();
  let best: GridCorner[] = [];
  for (let seed = 0; seed < saddles.length && best.length < saddles.length - taken.size; seed++) {
    if (taken.has(seed)) continue;
    const grid = grow(saddles, seed);
    const corners = straightOnes(toCorners(grid, saddles));
    taken.add(seed);
    // A seed that grew astray must not use up the corners of the board it strayed into.
    if (corners.length > best.length) {
      for (const { node } of corners) taken.add(node);
      best = corners.map(({ column, row, at }) => ({ column, row, at }));
    }
  }
  return best;
}

const key = (column: number, row: number): string => `${column},${row}`;

function grow(saddles: readonly Saddle[], seed: number): Map<string, Placed> {
  const grid = new Map<string, Placed>();
  const used = new Set<number>([seed]);
  const first = saddles[seed] as Saddle;
  const along = unit(first.rising);
  let down = unit(first.falling);
  if (cross(along, down) < 0) down = [-down[0], -down[1]];
  grid.set(key(0, 0), { node: seed, axes: [along, down] });
  const queue: (readonly [number, number])[] = [[0, 0]];
  for (let here = queue.shift(); here !== undefined; here = queue.shift()) {
    const [column, row] = here;
    const placed = grid.get(key(column, row)) as Placed;
    for (const way of WAYS) {
      const next = [column + way[0], row + way[1]] as const;
      if (grid.has(key(...next))) continue;
      const step = expectedStep(grid, saddles, column, row, way);
      const reach = step === null ? FARTHEST * spacing(grid, saddles, placed, here) : 0;
      const node = neighbour(saddles, used, placed, way, step, reach);
      if (node === null) continue;
      used.add(node);
      grid.set(key(...next), { node, axes: axesLike(saddles[node] as Saddle, placed.axes) });
      queue.push(next);
    }
  }
  return grid;
}

/** The last step the same way, here or in the rows beside; null: none known yet. */
function expectedStep(
  grid: ReadonlyMap<string, Placed>,
  saddles: readonly Saddle[],
  column: number,
  row: number,
  [dc, dr]: Vector,
): Vector | null {
  const at = (c: number, r: number): ImagePoint | null => {
    const placed = grid.get(key(c, r));
    return placed === undefined ? null : (saddles[placed.node] as Saddle).at;
  };
  for (const [from, to] of [
    [
      [column - dc, row - dr],
      [column, row],
    ],
    [
      [column + dr, row + dc],
      [column + dr + dc, row + dc + dr],
    ],
    [
      [column - dr, row - dc],
      [column - dr + dc, row - dc + dr],
    ],
  ] as const) {
    const a = at(from[0], from[1]);
    const b = at(to[0], to[1]);
    if (a !== null && b !== null) return [b[0] - a[0], b[1] - a[1]];
  }
  return null;
}

function neighbour(
  saddles: readonly Saddle[],
  used: ReadonlySet<number>,
  placed: Placed,
  way: Vector,
  step: Vector | null,
  reach: number,
): number | null {
  const here = saddles[placed.node] as Saddle;
  const axis = placed.axes[way[0] === 0 ? 1 : 0];
  const sense = way[0] + way[1];
  const aim: Vector = step ?? [axis[0] * sense, axis[1] * sense];
  const heading = Math.atan2(aim[1], aim[0]);
  const line = Math.atan2(axis[1], axis[0]);
  const rises = betweenLines(line, here.rising) < betweenLines(line, here.falling);
  let best: number | null = null;
  let bestDistance = step === null ? reach : STRAY * Math.hypot(...step);
  for (let i = 0; i < saddles.length; i++) {
    if (used.has(i)) continue;
    const other = saddles[i] as Saddle;
    const dx = other.at[0] - here.at[0];
    const dy = other.at[1] - here.at[1];
    const distance = step === null ? Math.hypot(dx, dy) : Math.hypot(dx - step[0], dy - step[1]);
    if (distance >= bestDistance) continue;
    const direction = Math.atan2(dy, dx);
    if (step === null && (distance < CLOSEST || Math.abs(turn(direction - heading)) > AIM))
      continue;
    if (betweenLines(rises ? other.falling : other.rising, direction) > ALIKE) continue;
    best = i;
    bestDistance = distance;
  }
  return best;
}

/** Distance to the nearest placed neighbour, or where there is none yet to the nearest saddle of the other kind. */
function spacing(
  grid: ReadonlyMap<string, Placed>,
  saddles: readonly Saddle[],
  placed: Placed,
  [column, row]: Vector,
): number {
  const { at, rising, falling } = saddles[placed.node] as Saddle;
  const distanceTo = (other: Saddle) => Math.hypot(other.at[0] - at[0], other.at[1] - at[1]);
  const beside = WAYS.flatMap(([dc, dr]) => {
    const other = grid.get(key(column + dc, row + dr));
    return other === undefined ? [] : [distanceTo(saddles[other.node] as Saddle)];
  });
  if (beside.length > 0) return Math.min(...beside);
  const others = saddles.filter(
    (other) =>
      distanceTo(other) > CLOSEST &&
      betweenLines(other.rising, falling) < ALIKE &&
      betweenLines(other.falling, rising) < ALIKE,
  );
  return Math.min(...others.map(distanceTo));
}

/** A saddle's lines as column and row directions that turn no farther from the neighbour's than they must. */
function axesLike(saddle: Saddle, [along, down]: Placed['axes']): Placed['axes'] {
  const lines = [unit(saddle.rising), unit(saddle.falling)] as const;
  const first = Math.abs(dot(lines[0], along)) > Math.abs(dot(lines[1], along)) ? 0 : 1;
  const like = (line: Vector, other: Vector): Vector =>
    dot(line, other) < 0 ? [-line[0], -line[1]] : line;
  return [like(lines[first], along), like(lines[1 - first] as Vector, down)];
}

const toCorners = (
  grid: ReadonlyMap<string, Placed>,
  saddles: readonly Saddle[],
): (GridCorner & { readonly node: number })[] =>
  [...grid].map(([place, { node }]) => {
    const [column = 0, row = 0] = place.split(',').map(Number);
    return { column, row, at: (saddles[node] as Saddle).at, node };
  });

/** Without corners that stand out of line between their neighbours, or have no neighbour two ways. */
export function straightOnes<T extends GridCorner>(corners: readonly T[]): T[] {
  const places = new Map(corners.map((corner) => [key(corner.column, corner.row), corner]));
  return corners.filter(({ column, row, at }) => {
    let ways = 0;
    for (const [dc, dr] of [
      [1, 0],
      [0, 1],
    ] as const) {
      const before = places.get(key(column - dc, row - dr))?.at;
      const after = places.get(key(column + dc, row + dr))?.at;
      if (before !== undefined || after !== undefined) ways++;
      if (before === undefined || after === undefined) continue;
      const half = Math.hypot(after[0] - before[0], after[1] - before[1]) / 2;
      const off = Math.hypot(
        at[0] - (before[0] + after[0]) / 2,
        at[1] - (before[1] + after[1]) / 2,
      );
      if (off > BENT * half) return false;
    }
    return ways === 2;
  });
}

const unit = (angle: number): Vector => [Math.cos(angle), Math.sin(angle)];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1];
const cross = (a: Vector, b: Vector): number => a[0] * b[1] - a[1] * b[0];
