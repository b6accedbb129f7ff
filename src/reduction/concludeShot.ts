import { orUnavailable } from '../core/estimate';
import { failure, type Outcome } from '../core/reason';
import { unitVector } from '../core/vector';
import { SOFTWARE_VERSION } from '../core/version';
import { determineExit } from '../exit/determineExit';
import type { ExitReport } from '../exit/exitReport';
import type { FlightPoint, SharedInputs } from '../exit/types';
import { imageDirection } from '../geometry/view';
import { RESULT_FORMAT, RESULT_VERSION, type Result, type Warning } from '../shot/result';
import { adviceOf } from '../uncertainty/advice';
import { fitCurve } from './curve';
import { driveOf } from './drive';
import { concludeEvents } from './events';
import { filmWarnings } from './filmWarnings';
import { concludeFlight, withTarget } from './flight';
import { layOut } from './layOut';
import type { MeasuredFilm } from './measureFilm';
import { reportPositions } from './positions';
import { type Scene, setScene } from './scene';
import { setupWarnings } from './setupScene';
import { shakeWarnings } from './shake';
import { sharedInputs } from './sharedInputs';
import { concludeSound } from './sound';
import { spinOf } from './spin';
import { streakSpeedOf } from './streakSpeed';
import { throughWall } from './throughWall';
import type { Reduction, ReductionEvent, ReductionInputs } from './types';

/** Fewer centres than this give no speed with an uncertainty. */
const FEWEST_POINTS = 3;

/**
 * From measured centres and seal to the result: axis, fit, exit, burst, lead, uncertainty. Touches no pixel, so an
 * edit that leaves the pixels alone is concluded again at once.
 */
export function concludeShot(
  inputs: ReductionInputs,
  measured: MeasuredFilm,
  onEvent: (event: ReductionEvent) => void = () => undefined,
): Reduction {
  const { shot } = inputs;
  const scene = setScene(inputs);
  const layout = layOut(inputs, scene, measured);
  const { seen, kept, travel, line, metresPerPixel, points } = layout;

  onEvent({ kind: 'progress', stage: 'fit', done: 0, total: 1 });
  const shared = sharedInputs(shot, scene, metresPerPixel, travel);
  const beforeTrials = () => onEvent({ kind: 'progress', stage: 'uncertainty', done: 0, total: 1 });
  const behindWall = throughWall(inputs, scene, layout, shared);
  const exit = withTarget(
    shot.fit.model === 'boreAndFlight'
      ? exitOf(inputs, measured, behindWall.points, behindWall.shared, beforeTrials)
      : exitOf(inputs, measured, points, shared, beforeTrials),
    layout,
  );
  onEvent({ kind: 'progress', stage: 'uncertainty', done: 1, total: 1 });
  const leftOut = new Map(exit.ok ? exit.value.leftOut.map((one) => [one.frame, one.reason]) : []);
  const rejected = new Set(shot.edits.rejectedFrames);
  const positions = reportPositions(seen, rejected, leftOut, line, scene.clock, metresPerPixel);
  const events = concludeEvents(inputs, scene, measured, exit, line, metresPerPixel);
  const streak = streakSpeedOf(inputs, scene, measured, exit, points, line, shared);
  const spin = spinOf(inputs, scene, measured, exit);
  const exitVelocity = orUnavailable(exit, (report) => report.exitVelocity);
  const exitTime = orUnavailable(exit, (report) => report.exitTime);
  const { sealBurst, lead } = events;
  const sound = concludeSound(inputs, scene.clock, { sealBurst, exitTime, exitVelocity, lead });

  const warnings: Warning[] = [
    ...scene.clock.warnings,
    ...scene.scale.warnings,
    ...travel.warnings,
    ...filmWarnings(inputs, scene, kept, line, measured),
    ...setupWarnings(measured.since),
    ...shakeWarnings(measured.shake, lastInMuzzle(scene, measured, exit)),
    ...(exit.ok ? exit.value.warnings : []),
    ...events.warnings,
    ...(streak.ok ? streak.value.warnings : []),
    ...(spin.ok ? spin.value.warnings : []),
    ...sound.warnings,
  ];
  const result: Result = {
    format: RESULT_FORMAT,
    version: RESULT_VERSION,
    shot: shot.name,
    software: SOFTWARE_VERSION,
    footageSha256: inputs.footageSha256,
    inputs: null,
    exitVelocity,
    exitTime,
    sealBurst,
    rearBurst: events.rearBurst,
    lead,
    contact: events.contact,
    contactLead: events.contactLead,
    burstExitCorrelation: events.burstExitCorrelation,
    positions,
    fit: orUnavailable(exit, (report) => report.fit),
    budget: {
      exitVelocity: exit.ok ? exit.value.budget : [],
      sealBurst: events.budget,
      advice: exit.ok ? adviceOf(exit.value.budget) : [],
    },
    monteCarlo: orUnavailable(exit, (report) => report.monteCarlo),
    scale: { value: metresPerPixel, u: scene.scale.u / travel.cosine },
    axis: unitVector(imageDirection(scene.atMuzzle, travel.axis)),
    streak: orUnavailable(streak, ({ report }) => report),
    flight: concludeFlight(inputs, scene, measured, exit, layout, behindWall),
    sound: sound.report,
    spin: orUnavailable(spin, (found) => found.spin),
    breakUp: measured.breakUp,
    rivals: measured.track.ok ? measured.track.value.rivals : [],
    shake: measured.shake.report,
    warnings,
  };
  return {
    result,
    drive: driveOf(shot),
    curve: exit.ok ? fitCurve(exit.value, positions) : null,
    seal: events.trace,
    fingerprint: measured.fingerprint,
  };
}

function exitOf(
  { shot }: ReductionInputs,
  measured: MeasuredFilm,
  points: Outcome<readonly FlightPoint[]>,
  shared: SharedInputs,
  beforeTrials: () => void,
): Outcome<ExitReport> {
  if (!points.ok) return points;
  if (points.value.length < FEWEST_POINTS) return tooFew(measured, points.value.length);
  const { coverage, seed } = shot;
  return determineExit(points.value, shared, { ...shot.fit, coverage, seed }, beforeTrials);
}

/** The last frame before the ball has left the muzzle; null where no ball is found. */
function lastInMuzzle(
  { clock, muzzle }: Scene,
  { track, gains }: MeasuredFilm,
  exit: Outcome<ExitReport>,
): number | null {
  if (!track.ok) return null;
  if (!exit.ok) return (track.value.points[0]?.frame ?? 0) - 1;
  const left = gains.findIndex(
    (_, frame) => clock.timeAt(frame, ...muzzle.point) > exit.value.exitTime.value,
  );
  return (left < 0 ? gains.length : left) - 1;
}

/** Why there are too few points: the ball was not found at all, or not often enough. */
function tooFew(measured: MeasuredFilm, count: number): Outcome<never> {
  if (!measured.track.ok && count === 0) return measured.track;
  return failure(
    'tooFewFrames',
    `The ball's centre is known in ${count} frame${count === 1 ? '' : 's'}; a speed with its uncertainty needs at least ${FEWEST_POINTS}.`,
    'Film at a higher rate or with a wider view, or place the missing centres by hand.',
    { form: 'centres', frames: count, fewest: FEWEST_POINTS },
  );
}
