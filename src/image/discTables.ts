/** A pixel deeper inside the disc, or farther outside, than this many standard deviations of the edge's blur is all ball or all background. */
export const EDGE_REACH = 4;

/** Tables over z, the depth of a pixel's middle inside the disc in standard deviations of the blur. */
export const TABLE_STEP = 0.02;
export const TABLE_SIZE = Math.round((2 * EDGE_REACH) / TABLE_STEP) + 1;
/** Share of the blur's weight that lies on the disc. */
export const COVER = new Float64Array(TABLE_SIZE);
/** The blur's weight at the disc's rim. */
export const DENSITY = new Float64Array(TABLE_SIZE);
/**
 * A row for each z, with what the soft edge takes together: cover, density, how much further in what the
 * blur gathers of the disc lies in the mean, the mean root of its depth, that root's slope, and its spread.
 */
export const EDGE_COLUMNS = 6;
export const EDGE = new Float64Array(EDGE_COLUMNS * TABLE_SIZE);

for (let i = 0; i < TABLE_SIZE; i++) {
  const z = i * TABLE_STEP - EDGE_REACH;
  let cover = 0;
  let depth = 0;
  let change = 0;
  // Midpoints in the root of the depth, where the integrands are smooth.
  const step = 0.005;
  for (let q = step / 2; q * q < z + 8; q += step) {
    const part = 2 * q * step * normalDensity(z - q * q);
    cover += part;
    depth += q * part;
    change += q * part * (q * q - z);
  }
  const density = normalDensity(z);
  const further = density / cover;
  const root = depth / cover;
  const rootSlope = (change - root * density) / cover;
  const spread = Math.sqrt(Math.max(0, z + further - root * root));
  COVER[i] = cover;
  DENSITY[i] = density;
  EDGE.set([cover, density, further, root, rootSlope, spread], EDGE_COLUMNS * i);
}

function normalDensity(z: number): number {
  return 0.3989422804014327 * Math.exp(-0.5 * z * z);
}

/** Nodes and weights of Gauss and Legendre on 0..1, by their number. */
export const GAUSS: readonly { readonly node: Float64Array; readonly weight: Float64Array }[] =
  Array.from({ length: 9 }, (_, n) => gaussLegendre(n));

function gaussLegendre(n: number) {
  const node = new Float64Array(n);
  const weight = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let round = 0; round < 50; round++) {
      let before = 1;
      let value = x;
      for (let k = 2; k <= n; k++) {
        const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
        before = value;
        value = next;
      }
      slope = (n * (x * value - before)) / (x * x - 1);
      const step = value / slope;
      x -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    node[i] = (1 - x) / 2;
    weight[i] = 1 / ((1 - x * x) * slope * slope);
  }
  return { node, weight };
}
