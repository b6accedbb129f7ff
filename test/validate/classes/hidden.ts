import {
  biasPoint,
  biasRow,
  calibrationRows,
  calibrationSeries,
  NORMAL_SHARES,
  ratioPoint,
  ratioRow,
  refusedRow,
  rmsPoint,
  type Sample,
  samplesOf,
  seriesBy,
} from '../figures';
import { drawHiddenShot } from '../hiddenShot';
import type { ShotRecord } from '../record';
import type { ClassReport, ReportPlot } from '../types';
import { ballClass, type Order, SURFACES, times } from './ballClass';

const RADII = [12, 20, 28] as const;
const CONTRASTS = [10, 30] as const;
const REPEATS = 8;
const HIDERS = ['flange', 'frame edge', 'fragment'] as const;
/** Shares of the disc in view that count as half. */
const HALF = [0.35, 0.65] as const;
const MOST_RATIO = 2;
const MOST_BIAS = 0.05;
const MOST_REFUSED = 10;

const order = (radius: number, contrastToNoise: number, surface: Order['surface']): Order => ({
  radius,
  contrastToNoise,
  surface,
  boundEvery: 100,
  draw: (random) => drawHiddenShot({ radius, contrastToNoise, surface }, random),
});

/** Half hidden by a flange, the frame's edge or a fragment. */
export const hidden = ballClass(
  'hidden',
  3,
  RADII.flatMap((radius) =>
    CONTRASTS.flatMap((contrast) =>
      times(REPEATS, () => SURFACES.map((surface) => order(radius, contrast, surface))),
    ),
  ),
  conclude,
);

const isHalf = ({ visible }: Sample): boolean => visible > HALF[0] && visible < HALF[1];

function conclude(shots: readonly ShotRecord[]): ClassReport {
  const every = samplesOf(shots);
  const all = every.filter(isHalf);
  return {
    rows: [
      ratioRow('all', all, MOST_RATIO),
      biasRow('all', all, { high: MOST_BIAS }),
      ...calibrationRows('all', all),
      refusedRow('all', all, MOST_REFUSED),
      ...HIDERS.flatMap((hider) => {
        const by = all.filter(({ hiddenBy }) => hiddenBy === hider);
        const of = `by a ${hider}`;
        return [
          ratioRow(of, by, MOST_RATIO),
          biasRow(of, by, { high: MOST_BIAS }),
          refusedRow(of, by, MOST_REFUSED),
        ];
      }),
    ],
    plots: plots(every),
    text: `Balls of radius ${RADII.join(', ')} px, c/n ${CONTRASTS.join(' and ')}, half even discs, half matt, of which ${100 * HALF[0]} to ${100 * HALF[1]} % of the disc shows: a flange that is part of the still scene, the frame's edge, or a fragment of any brightness that is in that frame only hides the rest. Each shot also has frames with the ball in full view, from which the ball is learnt. The bound's unknowns are those of the clean class; where flange or fragment end is taken as known. Bias: the largest of the mean errors along and across the flight and towards what hides the ball. The plots show all shares.`,
  };
}

const byHider = seriesBy(
  HIDERS,
  ({ hiddenBy }) => hiddenBy,
  (hider) => hider,
);

function plots(every: readonly Sample[]): ReportPlot[] {
  const x = { label: 'share of the disc in view' };
  const key = ({ visible }: Sample) => Math.round(visible * 10) / 10;
  const series = (figure: typeof rmsPoint) => byHider(every, key, figure);
  return [
    {
      file: 'hidden-ratio',
      title: 'Ratio to the bound against the share in view',
      x,
      y: { label: 'RMS over bound' },
      series: series(ratioPoint),
      limits: [1, MOST_RATIO],
    },
    {
      file: 'hidden-rms',
      title: 'RMS error against the share in view',
      x,
      y: { label: 'RMS error, px', log: true },
      series: series(rmsPoint),
      limits: [],
    },
    {
      file: 'hidden-bias',
      title: 'Bias against the share in view',
      x,
      y: { label: 'bias, px' },
      series: series(biasPoint),
      limits: [0, MOST_BIAS],
    },
    {
      file: 'hidden-calibration',
      title: 'Calibration against the share in view',
      x,
      y: { label: 'share of errors, %' },
      series: calibrationSeries(every, key),
      limits: NORMAL_SHARES,
    },
  ];
}
