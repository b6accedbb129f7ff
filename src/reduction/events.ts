import { orUnavailable, type Quantity, type Reported } from '../core/estimate';
import { quantity } from '../core/quantity';
import { failure, type Outcome, success } from '../core/reason';
import type { ImagePoint, Seconds } from '../core/units';
import type { ExitReport } from '../exit/exitReport';
import type { FlightLine } from '../geometry/flightLine';
import { burstBounds } from '../seal/bounds';
import { type BurstReport, locateBurst } from '../seal/burst';
import { leadOf } from '../seal/lead';
import type { BudgetEntry, SealBurst, Warning } from '../shot/result';
import type { Seal } from '../shot/schema';
import { uniformU } from '../uncertainty/quantity';
import { driveOf } from './drive';
import type { MeasuredFilm } from './measureFilm';
import { alongImage, type Scene } from './scene';
import type { SealFilm } from './survey';
import type { Reduction, ReductionInputs } from './types';

/** Burst, exit and contact set against each other. */
export interface Events {
  readonly sealBurst: SealBurst;
  /** Null: no rear seal is stated. */
  readonly rearBurst: SealBurst | null;
  readonly lead: Reported;
  readonly contact: Reported;
  readonly contactLead: Reported;
  readonly burstExitCorrelation: number | null;
  readonly budget: readonly BudgetEntry[];
  readonly trace: Reduction['seal'];
  readonly warnings: readonly Warning[];
}

/** What the film says of the moments around the exit. */
export function concludeEvents(
  inputs: ReductionInputs,
  scene: Scene,
  measured: MeasuredFilm,
  exit: Outcome<ExitReport>,
  line: FlightLine,
  metresPerPixel: number,
): Events {
  const { shot } = inputs;
  const contact = contactOf(inputs, scene, exit, line, metresPerPixel);
  const through = contact.ok ? contact.value.value : null;
  const burst = shot.seals?.muzzle
    ? burstOf(inputs, scene, measured.seal, shot.seals.muzzle, through)
    : failure('noSealInView', 'The shot states that no muzzle seal is in view.');
  const rear =
    measured.rear && shot.seals?.rear
      ? burstOf(inputs, scene, measured.rear, shot.seals.rear, null)
      : null;
  const shared = (event: Quantity, place: ImagePoint, report: BurstReport): number =>
    sharedClock(scene, report.burst, sealPlane(measured, line), event, place);
  const lead = (event: Outcome<Quantity>, place: ImagePoint): Reported => {
    if (!event.ok) return { unavailable: event.reason };
    return orUnavailable(burst, (report) =>
      leadOf(event.value, report, shared(event.value, place, report), shot.coverage),
    );
  };
  const exitTime = exit.ok ? success(exit.value.exitTime) : exit;
  return {
    sealBurst: reportBurst(burst, measured.seal, through, scene),
    // The ball is on its way once the rear seal is open.
    rearBurst: rear && measured.rear && reportBurst(rear, measured.rear, through, scene),
    lead: lead(exitTime, line.muzzle),
    contact: orUnavailable(contact, (time) => time),
    contactLead: lead(contact, sealPlane(measured, line)),
    burstExitCorrelation:
      burst.ok && exitTime.ok
        ? coefficient(
            shared(exitTime.value, line.muzzle, burst.value),
            burst.value.burst,
            exitTime.value,
          )
        : null,
    budget: burst.ok ? burst.value.budget : [],
    trace: measured.seal.ok
      ? sealTrace(measured.seal.value, scene, metresPerPixel * alongImage(scene))
      : null,
    warnings: [burst, rear].flatMap((found) => (found?.ok ? found.value.warnings : [])),
  };
}

/** A burst as the result states it; where it is not found, what bounds it. */
function reportBurst(
  found: Outcome<BurstReport>,
  film: Outcome<SealFilm>,
  through: Seconds | null,
  { clock }: Scene,
): SealBurst {
  if (found.ok) {
    const { burst, bulgeOnset, between, posterior } = found.value;
    return { ...burst, bulgeOnset, between, posterior };
  }
  const bounds = film.ok
    ? burstBounds(film.value.observations, through, clock, film.value.view)
    : ([null, through] as const);
  return { unavailable: found.reason, bounds };
}

/** Where the muzzle seal's plane is read at. */
const sealPlane = ({ seal }: MeasuredFilm, line: FlightLine): ImagePoint =>
  seal.ok ? seal.value.view.plane : line.muzzle;

/**
 * When the ball's leading point reaches the seal plane: its centre is then one radius short of it. Read off the
 * flight path carried back by that radius, with what the drive in the bore may have changed over it in the uncertainty.
 */
function contactOf(
  { shot }: ReductionInputs,
  scene: Scene,
  exit: Outcome<ExitReport>,
  line: FlightLine,
  metresPerPixel: number,
): Outcome<Quantity> {
  if (!exit.ok) return exit;
  const { point, u: planeU } = shot.seals?.muzzle?.plane ?? { point: line.muzzle, u: 0 };
  const plane = scene.scale.view.flatten(point);
  if (!plane.ok) return plane;
  const s =
    line.along(plane.value[0], plane.value[1]) * metresPerPixel - shot.ball.diameter.value / 2;
  const time = exit.value.path.timeAt(s);
  if (!time.ok) return time;
  const speed = exit.value.exitVelocity.value;
  // Inside the bore it was still gaining speed, by no more than the atmosphere could give it.
  const sinceContact = exit.value.exitTime.value - time.value.value;
  const latest = (driveOf(shot).acceleration * sinceContact ** 2) / (2 * speed);
  const u = Math.hypot(
    time.value.u,
    shot.ball.diameter.u / 2 / speed,
    (planeU * alongImage(scene) * metresPerPixel) / speed,
    uniformU(latest),
  );
  return success(quantity(time.value.value, u, exit.value.exitTime.dof, shot.coverage));
}

/** When a seal opened; `through`: when the ball's leading point passes its plane, where it can be told. */
function burstOf(
  { shot }: ReductionInputs,
  scene: Scene,
  film: Outcome<SealFilm>,
  { burstBetween }: Seal,
  through: Seconds | null,
): Outcome<BurstReport> {
  if (!film.ok) return film;
  const { observations, view } = film.value;
  return locateBurst(observations, scene.clock, view, {
    coverage: shot.coverage,
    exposure: shot.timing.exposure,
    burstBetween,
    ballFrameLimit: through === null ? null : firstFrameAfter(through, film.value, scene),
    contact: through,
  });
}

function firstFrameAfter(
  time: Seconds,
  { observations, view }: SealFilm,
  scene: Scene,
): number | null {
  const [x, y] = view.plane;
  return observations.find(({ frame }) => scene.clock.timeAt(frame, x, y) > time)?.frame ?? null;
}

/** Covariance of burst and another event through the clock and line time they share, s^2. */
function sharedClock(
  { clock }: Scene,
  burst: Quantity,
  seal: ImagePoint,
  event: Quantity,
  place: ImagePoint,
): number {
  const lines = clock.lineAt(...seal) * clock.lineAt(...place);
  return burst.value * event.value * clock.rateRelativeU ** 2 + lines * clock.lineTime.u ** 2;
}

function coefficient(covariance: number, a: Quantity, b: Quantity): number {
  const product = a.u * b.u;
  return product > 0 ? Math.min(1, Math.max(-1, covariance / product)) : 0;
}

/** The film's outward displacement from the seal plane against time. */
function sealTrace(
  { observations, view }: SealFilm,
  scene: Scene,
  metresPerPixel: number,
): Reduction['seal'] {
  const [x, y] = view.plane;
  return {
    times: Float64Array.from(observations, ({ frame }) => scene.clock.timeAt(frame, x, y)),
    front: Float64Array.from(observations, ({ front }) => front * metresPerPixel),
    frontU: Float64Array.from(observations, ({ frontU }) => frontU * metresPerPixel),
  };
}
