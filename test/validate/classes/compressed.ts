import { throughH264 } from '../codec';
import {
  biasPoint,
  biasRow,
  calibrationRows,
  calibrationSeries,
  NORMAL_SHARES,
  refusedRow,
  rmsPoint,
  rmsRow,
  type Sample,
  samplesOf,
} from '../figures';
import type { ShotRecord } from '../record';
import { drawShot } from '../shot';
import type { ClassReport, ReportPlot } from '../types';
import { ballClass, bySurface, type Order, SURFACES, times } from './ballClass';

const RADIUS = 20;
const CRF = 23;
/** Other rate factors, for the plot. */
const OTHER_CRF = [12, 18, 28, 33] as const;
const CONTRASTS = [10, 20, 50] as const;
const REPEATS = 14;
const FRAMES = 20;
const MOST_RMS = 0.08;
const MOST_REFUSED = 2;

const order = (contrastToNoise: number, surface: Order['surface'], crf: number): Order => ({
  radius: RADIUS,
  contrastToNoise,
  surface,
  crf,
  boundEvery: FRAMES,
  film: (frames) => throughH264(frames, crf),
  draw: (random) =>
    drawShot(
      { radius: RADIUS, contrastToNoise, surface, step: 0.6, sweep: 0, sightings: FRAMES },
      random,
    ),
});

/** Coded with H.264 and decoded again. */
export const compressed = ballClass(
  'compressed',
  4,
  [
    ...CONTRASTS.flatMap((contrast) =>
      times(REPEATS, () => SURFACES.map((surface) => order(contrast, surface, CRF))),
    ),
    ...OTHER_CRF.flatMap((crf) =>
      times(3, () => SURFACES.map((surface) => order(20, surface, crf))),
    ),
  ],
  conclude,
);

function conclude(shots: readonly ShotRecord[]): ClassReport {
  const every = samplesOf(shots);
  const all = every.filter(({ crf }) => crf === CRF);
  return {
    rows: [
      rmsRow('all', all, MOST_RMS),
      biasRow('all', all, {}),
      ...calibrationRows('all', all),
      refusedRow('all', all, MOST_REFUSED),
      ...CONTRASTS.map((contrast) =>
        rmsRow(
          `c/n ${contrast}`,
          all.filter((s) => s.contrastToNoise === contrast),
          MOST_RMS,
        ),
      ),
    ],
    plots: plots(every),
    text: `Balls of radius ${RADIUS} px, c/n ${CONTRASTS.join(', ')} before coding, half even discs, half matt, in full view and at rest during the exposure; the film goes through x264 (H.264, preset medium, constant rate factor ${CRF}) and back. No bound is stated: what a codec throws away has no simple law. The plots add other rate factors at c/n 20.`,
  };
}

function plots(every: readonly Sample[]): ReportPlot[] {
  const x = { label: 'constant rate factor' };
  const key = ({ crf }: Sample) => crf ?? 0;
  const alike = every.filter((s) => s.contrastToNoise === 20);
  const series = (figure: typeof rmsPoint) => bySurface(alike, key, figure);
  return [
    {
      file: 'compressed-rms',
      title: 'RMS error against compression',
      x,
      y: { label: 'RMS error, px' },
      series: series(rmsPoint),
      limits: [MOST_RMS],
    },
    {
      file: 'compressed-bias',
      title: 'Bias against compression',
      x,
      y: { label: 'bias, px' },
      series: series(biasPoint),
      limits: [0],
    },
    {
      file: 'compressed-calibration',
      title: 'Calibration against compression',
      x,
      y: { label: 'share of errors, %' },
      series: calibrationSeries(alike, key),
      limits: NORMAL_SHARES,
    },
  ];
}
