import type { Patterns } from './faces';

/** Places followed on the ball, at the mean time: rings, as shares of the radius, and directions. */
const PLACES = [0.4, 0.55, 0.7, 0.8] as const;
const DIRECTIONS = 32;
/** Derivatives are differences over a turn of this much over the film, rad. */
const STEP = 0.01;

type Vector = readonly [x: number, y: number, z: number];

/**
 * How much the rate about the line of sight is misread for each rad/s that the ball turns about x or y besides: an
 * axis slightly off the line of sight moves a mark sideways as well, which a turn that is not full cannot tell from
 * a faster or slower one. Told by how the faces would change with either rotation. `still` is what stands still in
 * the image. Null where the faces do not say.
 */
export function axisLeverage(
  { faces, weights }: Patterns,
  still: Float64Array,
  rate: number,
): number | null {
  const first = faces[0];
  const last = faces.at(-1);
  if (first === undefined || last === undefined) return null;
  const mean = faces.reduce((sum, { time }) => sum + time, 0) / faces.length;
  const step = STEP / (last.time - first.time);
  const places = PLACES.flatMap((r) =>
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
  // Derivatives of every face at every place by the three rates.
  const slopes = [0, 1, 2].map((axis) => {
    const moved = (h: number): Vector => [
      axis === 0 ? h : 0,
      axis === 1 ? h : 0,
      axis === 2 ? rate + h : rate,
    ];
    const up = sample(moved(step));
    const down = sample(moved(-step));
    return faces.map((_, i) =>
      places.map((_place, p) => {
        const [a, b] = [up[i]?.[p], down[i]?.[p]];
        return a && b
          ? { slope: (a.value - b.value) / (2 * step), variance: (a.variance + b.variance) / 2 }
          : null;
      }),
    );
  });
  // Sums of products with the derivative by the rate about the line of sight, after each place's mean over the faces.
  const products = [0, 0, 0];
  for (let p = 0; p < places.length; p++) {
    const rows = faces.flatMap((_, i) => {
      const [x, y, z] = slopes.map((axis) => axis[i]?.[p] ?? null);
      if (!x || !y || !z) return [];
      return [{ w: (weights[i] as number) / z.variance, by: [x.slope, y.slope, z.slope] as const }];
    });
    const total = rows.reduce((sum, { w }) => sum + w, 0);
    if (!(total > 0)) continue;
    const means = [0, 1, 2].map(
      (axis) => rows.reduce((sum, { w, by }) => sum + w * (by[axis] as number), 0) / total,
    );
    for (const { w, by } of rows) {
      const turn = by[2] - (means[2] as number);
      for (let axis = 0; axis < 3; axis++) {
        products[axis] =
          (products[axis] as number) + w * turn * ((by[axis] as number) - (means[axis] as number));
      }
    }
  }
  const [byX = 0, byY = 0, byZ = 0] = products;
  return byZ > 0 ? Math.hypot(byX, byY) / byZ : null;
}

/** Rodrigues' rotation by `rate` times `time`. */
function turning(rate: Vector, time: number): (at: Vector) => Vector {
  const speed = Math.hypot(...rate);
  if (speed === 0) return (at) => at;
  const nx = rate[0] / speed;
  const ny = rate[1] / speed;
  const nz = rate[2] / speed;
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
  { surface: { radii, angles, residual, variance } }: Patterns['faces'][number],
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
