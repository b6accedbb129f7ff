import type { GreyFrame } from '../core/frame';
import type { Pixels } from '../core/units';

/** A softened picture, row by row. */
export interface Blurred {
  readonly data: Float32Array;
  readonly width: number;
  readonly height: number;
}

/** Softens by a Gaussian; beyond the border the last pixel goes on. */
export function gaussian({ data, width, height }: GreyFrame, sigma: Pixels): Blurred {
  const reach = Math.ceil(3 * sigma);
  const kernel = Float64Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-((k - reach) ** 2) / (2 * sigma * sigma)),
  );
  const sum = kernel.reduce((a, b) => a + b);
  const across = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let value = 0;
      for (let k = -reach; k <= reach; k++) {
        const at = x + k < 0 ? 0 : x + k >= width ? width - 1 : x + k;
        value += (kernel[k + reach] as number) * (data[y * width + at] as number);
      }
      across[y * width + x] = value / sum;
    }
  }
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let k = -reach; k <= reach; k++) {
      const at = y + k < 0 ? 0 : y + k >= height ? height - 1 : y + k;
      const weight = (kernel[k + reach] as number) / sum;
      for (let x = 0; x < width; x++) {
        out[y * width + x] =
          (out[y * width + x] as number) + weight * (across[at * width + x] as number);
      }
    }
  }
  return { data: out, width, height };
}

/** Grey value between pixels (bilinear); the place must lie a pixel inside. */
export function sample({ data, width }: Blurred, x: Pixels, y: Pixels): number {
  const left = Math.floor(x);
  const top = Math.floor(y);
  const fx = x - left;
  const fy = y - top;
  const p = top * width + left;
  return (
    (1 - fy) * ((1 - fx) * (data[p] as number) + fx * (data[p + 1] as number)) +
    fy * ((1 - fx) * (data[p + width] as number) + fx * (data[p + width + 1] as number))
  );
}
