/** A model of NIST's StRD, nonlinear regression: parameters and one row of predictors to the response. */
export type StrdModel = (b: readonly number[], ...x: number[]) => number;

const { atan, cos, exp, log, PI, sin } = Math;

/** Parameters as the files number them: b1 is `b(1)`. */
const of =
  (formula: (b: (index: number) => number, ...x: number[]) => number): StrdModel =>
  (b, ...x) =>
    formula((index) => b[index - 1] as number, ...x);

const saturation = of((b, x = 0) => b(1) * (1 - exp(-b(2) * x)));
const ultrasound = of((b, x = 0) => exp(-b(1) * x) / (b(2) + b(3) * x));
const twoPeaks = of(
  (b, x = 0) =>
    b(1) * exp(-b(2) * x) +
    b(3) * exp(-(((x - b(4)) / b(5)) ** 2)) +
    b(6) * exp(-(((x - b(7)) / b(8)) ** 2)),
);
const threeDecays = of(
  (b, x = 0) => b(1) * exp(-b(2) * x) + b(3) * exp(-b(4) * x) + b(5) * exp(-b(6) * x),
);
const cubicRatio = of(
  (b, x = 0) =>
    (b(1) + x * (b(2) + x * (b(3) + x * b(4)))) / (1 + x * (b(5) + x * (b(6) + x * b(7)))),
);
const wave = (x: number, period: number, c: number, s: number): number =>
  c * cos((2 * PI * x) / period) + s * sin((2 * PI * x) / period);

/** All 27 sets, in NIST's order of difficulty; models as printed in the files. */
export const STRD_MODELS = {
  lower: {
    Misra1a: saturation,
    Chwirut2: ultrasound,
    Chwirut1: ultrasound,
    Lanczos3: threeDecays,
    Gauss1: twoPeaks,
    Gauss2: twoPeaks,
    DanWood: of((b, x = 0) => b(1) * x ** b(2)),
    Misra1b: of((b, x = 0) => b(1) * (1 - (1 + (b(2) * x) / 2) ** -2)),
  },
  average: {
    Kirby2: of((b, x = 0) => (b(1) + x * (b(2) + x * b(3))) / (1 + x * (b(4) + x * b(5)))),
    Hahn1: cubicRatio,
    // Fitted to the logarithm of the response.
    Nelson: of((b, time = 0, temperature = 0) => b(1) - b(2) * time * exp(-b(3) * temperature)),
    MGH17: of((b, x = 0) => b(1) + b(2) * exp(-x * b(4)) + b(3) * exp(-x * b(5))),
    Lanczos1: threeDecays,
    Lanczos2: threeDecays,
    Gauss3: twoPeaks,
    Misra1c: of((b, x = 0) => b(1) * (1 - (1 + 2 * b(2) * x) ** -0.5)),
    Misra1d: of((b, x = 0) => (b(1) * b(2) * x) / (1 + b(2) * x)),
    Roszman1: of((b, x = 0) => b(1) - b(2) * x - atan(b(3) / (x - b(4))) / PI),
    ENSO: of(
      (b, x = 0) =>
        b(1) + wave(x, 12, b(2), b(3)) + wave(x, b(4), b(5), b(6)) + wave(x, b(7), b(8), b(9)),
    ),
  },
  higher: {
    MGH09: of((b, x = 0) => (b(1) * x * (x + b(2))) / (x * (x + b(3)) + b(4))),
    Thurber: cubicRatio,
    BoxBOD: saturation,
    Rat42: of((b, x = 0) => b(1) / (1 + exp(b(2) - b(3) * x))),
    MGH10: of((b, x = 0) => b(1) * exp(b(2) / (x + b(3)))),
    Eckerle4: of((b, x = 0) => (b(1) / b(2)) * exp(-0.5 * ((x - b(3)) / b(2)) ** 2)),
    Rat43: of((b, x = 0) => b(1) / (1 + exp(b(2) - b(3) * x)) ** (1 / b(4))),
    Bennett5: of((b, x = 0) => b(1) * (b(2) + x) ** (-1 / b(3))),
  },
} as const satisfies Record<string, Record<string, StrdModel>>;

/** What is fitted: the response, or where a file's model says so its logarithm. */
export const responseOf = (name: string, y: Float64Array): Float64Array =>
  name === 'Nelson' ? y.map(log) : y;
