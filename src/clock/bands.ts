/** Brightness of bands of lines over time: `value[frame * bands + band]`, each band's mean over time taken off. */
export interface Bands {
  readonly count: number;
  /** Line of each band's middle, counted from the middle of the picture. */
  readonly line: Float64Array;
  /** Mean brightness of each band over that of all. */
  readonly share: Float64Array;
  readonly mean: number;
  readonly value: Float64Array;
  readonly times: Float64Array;
  /** Lines in a band. */
  readonly size: number;
}

const MOST_BANDS = 64;
const FEWEST_BANDS = 16;
/** Values in one fit: bounds its memory and time. */
const MOST_VALUES = 2 ** 16;

/** Gathers lines (one array a frame) into bands narrow against the flicker's. */
export function gatherBands(lines: readonly Float64Array[], times: Float64Array): Bands {
  const total = lines[0]?.length ?? 0;
  const wanted = Math.max(FEWEST_BANDS, Math.floor(MOST_VALUES / lines.length));
  const size = Math.ceil(total / Math.min(MOST_BANDS, wanted, total));
  const count = Math.floor(total / size);
  const value = new Float64Array(count * lines.length);
  const means = new Float64Array(count);
  for (const [k, profile] of lines.entries()) {
    for (let b = 0; b < count; b++) {
      let sum = 0;
      for (let i = b * size; i < (b + 1) * size; i++) sum += profile[i] as number;
      value[k * count + b] = sum / size;
      means[b] = (means[b] as number) + sum / size / lines.length;
    }
  }
  for (let i = 0; i < value.length; i++) {
    value[i] = (value[i] as number) - (means[i % count] as number);
  }
  const mean = means.reduce((sum, m) => sum + m / count, 0);
  const middle = times.reduce((sum, t) => sum + t / times.length, 0);
  return {
    count,
    line: Float64Array.from(means, (_, b) => b * size + (size - 1) / 2 - (total - 1) / 2),
    share: means.map((m) => m / (mean || 1)),
    mean,
    value,
    times: times.map((t) => t - middle),
    size,
  };
}

/** Where a wave runs through bands and time: cycles a second at a line, radians a line. */
export interface Wave {
  readonly frequency: number;
  readonly slope: number;
}

/** The strongest waves of either sense on a grid: the readout's sense need not be clear from the power alone. */
export function strongestWaves(
  bands: Bands,
  frequencies: readonly number[],
  mostSlope: number,
): { readonly rising: Wave; readonly falling: Wave } {
  const { count, line, value, times, size } = bands;
  const step = Math.PI / (4 * count * size);
  const steps = Math.max(1, Math.floor(mostSlope / step));
  let [up, down] = [-1, -1];
  let rising: Wave = { frequency: frequencies[0] ?? 0, slope: step };
  let falling: Wave = { frequency: frequencies[0] ?? 0, slope: -step };
  const real = new Float64Array(count);
  const imaginary = new Float64Array(count);
  for (const frequency of frequencies) {
    real.fill(0);
    imaginary.fill(0);
    for (let k = 0; k < times.length; k++) {
      const phase = 2 * Math.PI * frequency * (times[k] as number);
      const c = Math.cos(phase);
      const s = Math.sin(phase);
      for (let b = 0; b < count; b++) {
        const y = value[k * count + b] as number;
        real[b] = (real[b] as number) + c * y;
        imaginary[b] = (imaginary[b] as number) - s * y;
      }
    }
    for (let i = -steps; i <= steps; i++) {
      const slope = i * step;
      let re = 0;
      let im = 0;
      for (let b = 0; b < count; b++) {
        const phase = slope * (line[b] as number);
        const c = Math.cos(phase);
        const s = Math.sin(phase);
        re += c * (real[b] as number) + s * (imaginary[b] as number);
        im += c * (imaginary[b] as number) - s * (real[b] as number);
      }
      const power = re * re + im * im;
      if (i >= 0 && power > up) [up, rising] = [power, { frequency, slope }];
      if (i <= 0 && power > down) [down, falling] = [power, { frequency, slope }];
    }
  }
  return { rising, falling };
}
