import {
  biasSharePoint,
  biasShareRow,
  boundPoint,
  calibrationRows,
  calibrationSeries,
  MOST_BIAS_SHARE,
  NORMAL_SHARES,
  partBiasShareRow,
  partRatioRow,
  ratioPoint,
  ratioRow,
  refusedRow,
  rmsPoint,
  type Sample,
  samplesOf,
  seriesBy,
} from '../figures';
import type { ShotRecord } from '../record';
import { drawShot } from '../shot';
import type { ClassReport, ReportPlot } from '../types';
import { ballClass, bySurface, type Order, SURFACES, times } from './ballClass';

const RADII = [12, 20, 28, 40] as const;
const CONTRASTS = [5, 15, 50] as const;
/** Shots of each surface in each cell. */
const REPEATS = 5;
const FRAMES = 20;
const MOST_RATIO = 1.3;
const MOST_REFUSED = 2;

const order = (radius: number, contrastToNoise: number, surface: Order['surface']): Order => ({
  radius,
  contrastToNoise,
  surface,
  boundEvery: 5,
  draw: (random) =>
    drawShot({ radius, contrastToNoise, surface, step: 0.6, sweep: 0, sightings: FRAMES }, random),
});

const cells = RADII.flatMap((radius) => CONTRASTS.map((contrast) => ({ radius, contrast })));

/** Uncompressed, in full view, at rest during the exposure. */
export const clean = ballClass(
  'clean',
  1,
  cells.flatMap(({ radius, contrast }) =>
    times(REPEATS, () => SURFACES.map((surface) => order(radius, contrast, surface))),
  ),
  conclude,
);

function conclude(shots: readonly ShotRecord[]): ClassReport {
  const all = samplesOf(shots);
  const bias = (of: string, samples: readonly Sample[]) =>
    partBiasShareRow(of, samples, { high: MOST_BIAS_SHARE });
  return {
    rows: [
      ratioRow('all', all, MOST_RATIO),
      ...SURFACES.map((surface) =>
        ratioRow(
          `${surface} balls`,
          all.filter((s) => s.surface === surface),
          MOST_RATIO,
        ),
      ),
      biasShareRow('all', all, { high: MOST_BIAS_SHARE }),
      ...calibrationRows('all', all),
      refusedRow('all', all, MOST_REFUSED),
      ...cells.map(({ radius, contrast }) => {
        const cell = all.filter((s) => s.radius === radius && s.contrastToNoise === contrast);
        const of = `radius ${radius} px, c/n ${contrast}`;
        return partRatioRow(of, cell, MOST_RATIO);
      }),
      ...RADII.map((radius) =>
        bias(
          `radius ${radius} px`,
          all.filter((s) => s.radius === radius),
        ),
      ),
      ...CONTRASTS.map((contrast) =>
        bias(
          `c/n ${contrast}`,
          all.filter((s) => s.contrastToNoise === contrast),
        ),
      ),
    ],
    plots: plots(all),
    text: `Balls of radius ${RADII.join(', ')} px at a contrast-to-noise ratio (c/n) of ${CONTRASTS.join(', ')}, uncompressed, in full view, at rest during the exposure; half are even discs (dark or bright), half matt balls lit from one side, the lamp anywhere, c/n the mean over the disc and the limb nowhere below a fifth of it. The bound's unknowns: centre, radius (with the uncertainty the ball learnt from the film has), softness of the edge (likewise), contrast, background level and, for a matt ball, the lamp's direction and the share of ambient light, which the ${FRAMES} frames of a shot have in common. Bias: the largest of the mean errors along and across the flight and towards the lamp, each error over its bound, or over 0.0067 px where the bound is less: at the limit a bias of 0.3 of the bound or 0.002 px.`,
  };
}

const radii = seriesBy(
  RADII,
  ({ radius }) => radius,
  (radius) => `radius ${radius} px`,
);
const contrasts = seriesBy(
  CONTRASTS,
  ({ contrastToNoise }) => contrastToNoise,
  (contrast) => `c/n ${contrast}`,
);

function plots(all: readonly Sample[]): ReportPlot[] {
  const radius = { label: 'radius, px' };
  const contrast = { label: 'contrast over noise', log: true };
  const byContrast = (figure: typeof ratioPoint) => radii(all, (s) => s.contrastToNoise, figure);
  const byRadius = (figure: typeof ratioPoint) => contrasts(all, (s) => s.radius, figure);
  return [
    {
      file: 'clean-rms',
      title: 'RMS error and bound against radius',
      x: radius,
      y: { label: 'RMS error, px', log: true },
      series: [
        ...byRadius(rmsPoint),
        ...byRadius(boundPoint).map((series) => ({ ...series, name: `bound, ${series.name}` })),
      ],
      limits: [],
    },
    {
      file: 'clean-ratio-radius',
      title: 'Ratio to the bound against radius',
      x: radius,
      y: { label: 'RMS over bound' },
      series: byRadius(ratioPoint),
      limits: [1, MOST_RATIO],
    },
    {
      file: 'clean-ratio-contrast',
      title: 'Ratio to the bound against contrast',
      x: contrast,
      y: { label: 'RMS over bound' },
      series: byContrast(ratioPoint),
      limits: [1, MOST_RATIO],
    },
    {
      file: 'clean-bias',
      title: 'Bias over the bound against radius',
      x: radius,
      y: { label: 'bias over bound' },
      series: byRadius(biasSharePoint),
      limits: [0, MOST_BIAS_SHARE],
    },
    {
      file: 'clean-calibration-radius',
      title: 'Calibration against radius',
      x: radius,
      y: { label: 'share of errors, %' },
      series: calibrationSeries(all, (s) => s.radius),
      limits: NORMAL_SHARES,
    },
    {
      file: 'clean-calibration-contrast',
      title: 'Calibration against contrast',
      x: contrast,
      y: { label: 'share of errors, %' },
      series: calibrationSeries(all, (s) => s.contrastToNoise),
      limits: NORMAL_SHARES,
    },
    {
      file: 'clean-noise',
      title: 'Ratio to the bound against noise',
      x: { label: 'noise, grey values', log: true },
      y: { label: 'RMS over bound' },
      // Factors of two.
      series: bySurface(all, (s) => 2 ** Math.round(Math.log2(s.noise)), ratioPoint),
      limits: [1, MOST_RATIO],
    },
  ];
}
