import {
  biasSharePoint,
  biasShareRow,
  calibrationRows,
  calibrationSeries,
  NORMAL_SHARES,
  partRatioRow,
  ratioPoint,
  ratioRow,
  refusedRow,
  type Sample,
  samplesOf,
} from '../figures';
import type { ShotRecord } from '../record';
import { drawShot } from '../shot';
import type { ClassReport, ReportPlot } from '../types';
import { ballClass, bySurface, type Order, SURFACES, times } from './ballClass';

const RADII = [12, 16, 24] as const;
const CONTRASTS = [10, 30] as const;
const REPEATS = 8;
/** Lengths of the blur besides that of the class, radii, for the plot. */
const OTHER_SWEEPS = [0.25, 0.5, 1.5] as const;
/** Few, for the errors that a shot's frames share make the number of shots count. */
const FRAMES = 12;
const MOST_RATIO = 1.6;
const MOST_REFUSED = 2;

const order = (
  radius: number,
  contrastToNoise: number,
  surface: Order['surface'],
  sweep: number,
): Order => ({
  radius,
  contrastToNoise,
  surface,
  sweep,
  boundEvery: 10,
  draw: (random) =>
    drawShot(
      { radius, contrastToNoise, surface, step: 1.3 * sweep + 0.3, sweep, sightings: FRAMES },
      random,
    ),
});

/** Moved by one radius during the exposure. */
export const blur = ballClass(
  'blur',
  2,
  [
    ...RADII.flatMap((radius) =>
      CONTRASTS.flatMap((contrast) =>
        times(REPEATS, () => SURFACES.map((surface) => order(radius, contrast, surface, 1))),
      ),
    ),
    ...OTHER_SWEEPS.flatMap((sweep) =>
      times(1, () => SURFACES.map((surface) => order(20, 20, surface, sweep))),
    ),
  ],
  conclude,
);

function conclude(shots: readonly ShotRecord[]): ClassReport {
  const every = samplesOf(shots);
  const all = every.filter(({ sweep }) => sweep === 1);
  return {
    rows: [
      ratioRow('all', all, MOST_RATIO),
      biasShareRow('all', all, {}),
      ...calibrationRows('all', all),
      refusedRow('all', all, MOST_REFUSED),
      ...RADII.flatMap((radius) =>
        CONTRASTS.map((contrast) =>
          partRatioRow(
            `radius ${radius} px, c/n ${contrast}`,
            all.filter((s) => s.radius === radius && s.contrastToNoise === contrast),
            MOST_RATIO,
          ),
        ),
      ),
    ],
    plots: plots(every),
    text: `Balls of radius ${RADII.join(', ')} px, c/n ${CONTRASTS.join(' and ')}, that move by one radius during the exposure, half even discs, half matt; the exposure is told to the estimator 4 % wrong (standard deviation). The bound's unknowns are those of the clean class and the length of the blur, with the uncertainty the ball learnt from the film has. The plots add other lengths at radius 20 px, c/n 20.`,
  };
}

function plots(every: readonly Sample[]): ReportPlot[] {
  const x = { label: 'blur, radii' };
  const series = (figure: typeof ratioPoint) => bySurface(every, (s) => s.sweep, figure);
  return [
    {
      file: 'blur-ratio',
      title: 'Ratio to the bound against motion blur',
      x,
      y: { label: 'RMS over bound' },
      series: series(ratioPoint),
      limits: [1, MOST_RATIO],
    },
    {
      file: 'blur-bias',
      title: 'Bias over the bound against motion blur',
      x,
      y: { label: 'bias over bound' },
      series: series(biasSharePoint),
      limits: [0],
    },
    {
      file: 'blur-calibration',
      title: 'Calibration against motion blur',
      x,
      y: { label: 'share of errors, %' },
      series: calibrationSeries(every, (s) => s.sweep),
      limits: NORMAL_SHARES,
    },
  ];
}
