import type { ClassReport, ReportRow, ValidationClass } from '../types';
import { hardClips } from './clips';
import { renderFilm } from './film';
import { ALL_KINDS } from './kinds';
import { ENOUGH_IN_VIEW, MOST_ERROR, type Score, scoreFilm } from './score';

const CLIPS = 40;
/** Share of the frames with enough of the ball in view that must be accepted. */
const LEAST_ACCEPTED = 0.9;

/** Forty films of mixed clutter: no accepted centre may be wrong, and most frames must be accepted. */
export const clutter: ValidationClass<Score> = {
  name: 'clutter',
  chunks: CLIPS,
  async run(chunk, seed) {
    const clip = hardClips(seed, CLIPS)[chunk];
    if (clip === undefined) throw new Error(`There is no clip ${chunk}.`);
    return scoreFilm(await renderFilm(clip.seed, clip.kinds));
  },
  conclude,
};

function conclude(scores: readonly Score[]): ClassReport {
  const total = sum(scores);
  const of = `${scores.length} films of mixed clutter`;
  const row = (
    figure: string,
    unit: ReportRow['unit'],
    value: number,
    limit: ReportRow['limit'],
    n: number,
  ): ReportRow => ({
    of,
    figure,
    value,
    unit,
    limit,
    passed: value >= (limit.low ?? value) && value <= (limit.high ?? value),
    n,
  });
  const worst = Math.max(0, ...scores.map((score) => score.worst));
  const broken = scores.filter(({ brokenFrom }) => brokenFrom !== null);
  const told = broken.filter(breakIsTold).length;
  const falseAlarms = scores.filter(
    ({ brokenFrom, reportedBreak }) => brokenFrom === null && reportedBreak !== null,
  ).length;
  return {
    rows: [
      row('largest error of an accepted centre', 'px', worst, { high: MOST_ERROR }, total.taken),
      row('accepted centres off by more than 1 px', '', total.wrong, { high: 0 }, total.taken),
      row('accepted after the ball broke', '', total.afterBreak, { high: 0 }, total.taken),
      row(
        'accepted of frames with half the ball in view',
        '%',
        (100 * total.accepted) / Math.max(1, total.due),
        { low: 100 * LEAST_ACCEPTED },
        total.due,
      ),
      row(
        'break-ups told to within a frame',
        '%',
        100 * (told / Math.max(1, broken.length)),
        {},
        broken.length,
      ),
      row(
        'whole balls told to be broken',
        '',
        falseAlarms,
        { high: 0 },
        scores.length - broken.length,
      ),
    ],
    plots: [],
    text: [
      `${scores.length} films of 320 x 128 px, ball radius 10 to 16 px, each with two to four kinds of clutter drawn from the seed.`,
      `A frame is due where at least ${100 * ENOUGH_IN_VIEW} % of a whole ball's disc is in the frame and not hidden.`,
      `Accepted of due frames and largest error of the films with each kind: ${perKind(scores)}.`,
    ].join(' '),
  };
}

const breakIsTold = ({ brokenFrom, reportedBreak }: Score): boolean =>
  brokenFrom !== null && reportedBreak !== null && Math.abs(reportedBreak - brokenFrom) <= 1;

function sum(scores: readonly Score[]) {
  const total = { due: 0, accepted: 0, taken: 0, wrong: 0, afterBreak: 0 };
  for (const score of scores) {
    total.due += score.due;
    total.accepted += score.accepted;
    total.taken += score.taken;
    total.wrong += score.wrong.length;
    total.afterBreak += score.afterBreak.length;
  }
  return total;
}

/** A film's faults count for each of its kinds. */
function perKind(scores: readonly Score[]): string {
  return ALL_KINDS.flatMap((kind) => {
    const having = scores.filter(({ kinds }) => kinds.includes(kind));
    if (having.length === 0) return [];
    const { due, accepted, wrong } = sum(having);
    const worst = Math.max(...having.map((score) => score.worst));
    const off = wrong === 0 ? '' : `, ${wrong} off`;
    return `${kind} ${accepted} of ${due} (${worst.toFixed(2)} px${off})`;
  }).join('; ');
}
