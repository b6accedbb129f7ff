import { SUB } from './canvas';

/**
 * Takes samples (SUB x SUB a pixel) through the lens and the pixel: a Gaussian blur of standard
 * deviation `blur` px, then the mean over each pixel's square, in one separable kernel. Beyond the
 * image its edge samples go on.
 */
export class Optics {
  private readonly kernel: Float64Array;
  /** Samples the kernel reaches beyond the pixel's own, each way. */
  private readonly reach: number;
  private readonly across: Float32Array;

  constructor(
    private readonly width: number,
    private readonly height: number,
    blur: number,
  ) {
    this.reach = Math.ceil(4.5 * blur * SUB);
    this.kernel = pixelKernel(blur, this.reach);
    this.across = new Float32Array(width * height * SUB);
  }

  /** Pixel values into `out`; of each row r of samples all outside `first[r] .. last[r]` are zero. */
  image(samples: Float32Array, first: Int32Array, last: Int32Array, out: Float32Array): void {
    const { width, height, reach } = this;
    const rows = height * SUB;
    this.across.fill(0);
    out.fill(0);
    let top = rows;
    let bottom = -1;
    for (let r = 0; r < rows; r++) {
      const a = first[r] as number;
      const b = last[r] as number;
      if (b <= a) continue;
      top = Math.min(top, r);
      bottom = r;
      const c0 = Math.max(0, Math.floor((a - reach) / SUB) - 1);
      const c1 = Math.min(width - 1, Math.ceil((b + reach) / SUB));
      this.acrossRow(samples, r, c0, c1);
    }
    if (bottom < 0) return;
    const p0 = Math.max(0, Math.floor((top - reach) / SUB) - 1);
    const p1 = Math.min(height - 1, Math.ceil((bottom + 1 + reach) / SUB));
    for (let p = p0; p <= p1; p++) this.downTo(p, out);
  }

  private acrossRow(samples: Float32Array, r: number, c0: number, c1: number): void {
    const { kernel, reach, across, width } = this;
    const taps = kernel.length;
    const columns = width * SUB;
    const row = r * columns;
    for (let c = c0; c <= c1; c++) {
      const start = c * SUB - reach;
      let sum = 0;
      if (start >= 0 && start + taps <= columns) {
        const from = row + start;
        for (let k = 0; k < taps; k++) {
          sum += (kernel[k] as number) * (samples[from + k] as number);
        }
      } else {
        for (let k = 0; k < taps; k++) {
          const i = Math.min(Math.max(start + k, 0), columns - 1);
          sum += (kernel[k] as number) * (samples[row + i] as number);
        }
      }
      across[r * width + c] = sum;
    }
  }

  private downTo(p: number, out: Float32Array): void {
    const { kernel, reach, across, width } = this;
    const lastRow = this.height * SUB - 1;
    const to = p * width;
    for (let k = 0; k < kernel.length; k++) {
      const from = Math.min(Math.max(p * SUB - reach + k, 0), lastRow) * width;
      const weight = kernel[k] as number;
      for (let c = 0; c < width; c++) {
        out[to + c] = (out[to + c] as number) + weight * (across[from + c] as number);
      }
    }
  }
}

/** Weight of each sample in a pixel's value, adding up to 1. */
function pixelKernel(blur: number, reach: number): Float64Array {
  const kernel = new Float64Array(SUB + 2 * reach);
  for (let k = 0; k < kernel.length; k++) {
    for (let j = 0; j < SUB; j++) {
      kernel[k] = (kernel[k] as number) + Math.exp(-0.5 * ((k - reach - j) / SUB / blur) ** 2);
    }
  }
  const sum = kernel.reduce((total, weight) => total + weight, 0);
  return kernel.map((weight) => weight / sum);
}
