import type { Face, Patterns } from './faces';

/** What an axis off the line of sight may do to the rate about it. */
export interface AxisEffect {
  /** Standard uncertainty of a rate found with the axis along the line of sight that comes from not knowing it. */
  readonly u: number;
  /** By how much the rate found with the axis free differs. */
  readonly difference: number;
}

/** Places followed on the ball, at the mean time: rings, as shares of the radius, and directions. */
const PLACES = [0.4, 0.55, 0.7, 0.8] as const;
const DIRECTIONS = 32;
const ROUNDS = 12;
/** Derivatives are differences over a turn of this much over the film, rad. */
const STEP = 0.01;

type Vector = [number, number, number];

/**
 * An axis slightly off the line of sight moves a mark sideways as well, which a turn that is not full cannot tell
 * from a faster or slower one. So the rotation in space is fitted that lays all faces on each other best, once with
 * its axis along the line of sight and once free, held near it. `still`
 * is what stands still in the image; `axisU` is the
 * standard uncertainty of the rates about x and y, rad/s; `scatter` multiplies the noise. Null where there is no such fit.
 */
export function axisEffect(
  patterns: Patterns,
  still: Float64Array,
  start: number,
  axisU: number,
  scatter: number,
): AxisEffect | null {
  const fixed = fitRotation(patterns, still, start, axisU, scatter, [2]);
  if (fixed === null) return null;
  const free = fitRotation(patterns, still, fixed.rotation[2], axisU, scatter, [0, 1, 2]);
  if (free === null) return null;
  return {
    u: axisU * free.leverage,
    difference: free.rotation[2] - fixed.rotation[2],
  };
}

interface Rotation {
  /** rad/s about x, y and the line of sight. */
  readonly rotation: Vector;
  /** Change of the last per change of the first two, were those held. */
  readonly leverage: number;
}

/** Gauss-Newton on the components `free` of the rotation. */
function fitRotation(
  { faces, weights }: Patterns,
  still: Float64Array,
  start: number,
  axisU: number,
  scatter: number,
  free: readonly number[],
): Rotation | null {
  const first = faces[0];
  const last = faces.at(-1);
  if (first === undefined || last === undefined) return null;
  const mean = faces.reduce((sum, { time }) => sum + time, 0) / faces.length;
  const step = STEP / (last.time - first.time);
  const places: Vector[] = PLACES.flatMap((r) =>
    Array.from({ length: DIRECTIONS }, (_, k): Vector => {
      const angle = (2 * Math.PI * k) / DIRECTIONS;
      return [r * Math.cos(angle), r * Math.sin(angle), Math.sqrt(1 - r * r)];
    }),
  );
  const sample = (rotation: Vector) =>
    faces.map((face) => {
      const turned = turning(rotation, face.time - mean);
      return places.map((place) => read(face, still, turned(place)));
    });
  let rotation: Vector = [0, 0, start];
  let leverage = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const here = sample(rotation);
    const moved = [0, 1, 2].map((axis) => {
      if (!free.includes(axis)) return null;
      const by = (h: number): Vector =>
        rotation.with(axis, (rotation[axis] as number) + h) as Vector;
      return [sample(by(step)), sample(by(-step))] as const;
    });
    const normal = [0, 0, 0, 0, 0, 0, 0, 0, 0];
    const rhs = [0, 0, 0];
    let chiSquare = 0;
    let samples = 0;
    for (let p = 0; p < places.length; p++) {
      // Weighted means over the frames of the value and its derivatives, then the departures from them.
      const rows: { w: number; values: Vector; value: number }[] = [];
      for (let i = 0; i < faces.length; i++) {
        const at = here[i]?.[p];
        if (!at) continue;
        const slopes = moved.map((both) => {
          const [a, b] = [both?.[0][i]?.[p], both?.[1][i]?.[p]];
          return a && b ? (a.value - b.value) / (2 * step) : 0;
        }) as Vector;
        rows.push({ w: (weights[i] as number) / at.variance, values: slopes, value: at.value });
      }
      const total = rows.reduce((sum, { w }) => sum + w, 0);
      if (rows.length < 3 || !(total > 0)) continue;
      const meanOf = (of: (row: (typeof rows)[number]) => number) =>
        rows.reduce((sum, row) => sum + row.w * of(row), 0) / total;
      const level = meanOf(({ value }) => value);
      const slopes = [0, 1, 2].map((a) => meanOf(({ values }) => values[a] as number));
      for (const { w, values, value } of rows) {
        const off = value - level;
        chiSquare += w * off * off;
        for (let a = 0; a < 3; a++) {
          const da = (values[a] as number) - (slopes[a] as number);
          rhs[a] = (rhs[a] as number) - w * da * off;
          for (let b = 0; b < 3; b++) {
            const db = (values[b] as number) - (slopes[b] as number);
            normal[3 * a + b] = (normal[3 * a + b] as number) + w * da * db;
          }
        }
      }
      samples += rows.length - 1;
    }
    const scale2 = Math.max(1, scatter ** 2, chiSquare / Math.max(1, samples - 3));
    leverage = Math.hypot(normal[6] as number, normal[7] as number) / (normal[8] as number);
    const prior = 1 / axisU ** 2;
    for (let k = 0; k < 9; k++) normal[k] = (normal[k] as number) / scale2;
    for (let a = 0; a < 3; a++) rhs[a] = (rhs[a] as number) / scale2;
    for (let a = 0; a < 2; a++) {
      normal[4 * a] = (normal[4 * a] as number) + prior;
      rhs[a] = (rhs[a] as number) - prior * (rotation[a] as number);
    }
    for (let a = 0; a < 3; a++) if (!free.includes(a)) normal[4 * a] = 1;
    const inverse = inverse3(normal);
    if (inverse === null) return null;
    const move = [0, 1, 2].map((a) =>
      [0, 1, 2].reduce((sum, b) => sum + (inverse[3 * a + b] as number) * (rhs[b] as number), 0),
    );
    const size = Math.max(...move.map(Math.abs));
    const most = 20 * step;
    const share = size > most ? most / size : 1;
    rotation = rotation.map((value, a) => value + share * (move[a] as number)) as Vector;
    if (size < step / 20) break;
  }
  return { rotation, leverage };
}

/** Rodrigues' rotation by `rate` times `time`. */
function turning(rate: Vector, time: number): (at: Vector) => Vector {
  const speed = Math.hypot(...rate);
  if (speed === 0) return (at) => at;
  const [nx, ny, nz] = rate.map((one) => one / speed) as Vector;
  const c = Math.cos(speed * time);
  const s = Math.sin(speed * time);
  return ([x, y, z]) => {
    const along = (nx * x + ny * y + nz * z) * (1 - c);
    return [
      c * x + s * (ny * z - nz * y) + along * nx,
      c * y + s * (nz * x - nx * z) + along * ny,
      c * z + s * (nx * y - ny * x) + along * nz,
    ];
  };
}

/** A face's value at a place on the ball, between the rings and directions; null where it is not seen. */
function read(
  { surface: { radii, angles, residual, variance } }: Face,
  still: Float64Array,
  [x, y, z]: Vector,
): { readonly value: number; readonly variance: number } | null {
  const r = Math.hypot(x, y);
  const rings = radii.length;
  if (z <= 0 || r < (radii[0] as number) || r > (radii[rings - 1] as number)) return null;
  let ring = 0;
  while (ring < rings - 2 && r > (radii[ring + 1] as number)) ring++;
  const low = radii[ring] as number;
  const outer = (r - low) / ((radii[ring + 1] as number) - low);
  const turn = ((Math.atan2(y, x) / (2 * Math.PI) + 1) * angles) % angles;
  const k = Math.floor(turn);
  const f = turn - k;
  let value = 0;
  let spread = 0;
  for (let side = 0; side < 4; side++) {
    const share = (side < 2 ? 1 - outer : outer) * (side % 2 === 0 ? 1 - f : f);
    const at = (side < 2 ? ring : ring + 1) * angles + ((k + (side % 2)) % angles);
    value += share * ((residual[at] as number) - (still[at] as number));
    spread += share * (variance[at] as number);
  }
  return Number.isFinite(spread) ? { value, variance: spread } : null;
}

function inverse3(m: readonly number[]): number[] | null {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = m;
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (!(Math.abs(det) > 0)) return null;
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ].map((one) => one / det);
}
