import { orUnavailable, type Quantity, type Reported } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import type { Seconds } from '../core/units';
import type { ExitReport } from '../exit/exitReport';
import type { FlightLine } from '../geometry/flightLine';
import { type BurstReport, locateBurst } from '../seal/burst';
import type { BudgetEntry, SealBurst, Warning } from '../shot/result';
import { difference, quantity, uniformU } from '../uncertainty/quantity';
import { driveOf } from './drive';
import type { MeasuredFilm } from './measureFilm';
import { alongImage, type Scene } from './scene';
import type { SealFilm } from './survey';
import type { Reduction, ReductionInputs } from './types';

/** Burst, exit and contact set against each other. */
export interface Events {
  readonly sealBurst: SealBurst;
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
  const burst = burstOf(inputs, scene, measured, contact);
  const correlation =
    burst.ok && exit.ok ? sharedClock(scene, burst.value.burst, exit.value.exitTime, line) : null;
  const lead = (event: Outcome<Quantity>): Reported => {
    if (!event.ok) return { unavailable: event.reason };
    return orUnavailable(burst, (report) =>
      difference(event.value, report.burst, correlation ?? 0, shot.coverage),
    );
  };
  const warnings: Warning[] = burst.ok ? [...burst.value.warnings] : [];
  if (shot.seals?.rear) {
    warnings.push({
      code: 'rearSealNotMeasured',
      message: 'The rear seal is stated but this version times the muzzle seal only.',
      remedy: 'Step to the frame of the puncture by eye if it is needed.',
    });
  }
  return {
    sealBurst: burst.ok
      ? {
          ...burst.value.burst,
          bulgeOnset: burst.value.bulgeOnset,
          between: burst.value.between,
          posterior: burst.value.posterior,
        }
      : { unavailable: burst.reason, bounds: [null, null] },
    lead: lead(exit.ok ? success(exit.value.exitTime) : exit),
    contact: orUnavailable(contact, (time) => time),
    contactLead: lead(contact),
    burstExitCorrelation: correlation,
    budget: burst.ok ? burst.value.budget : [],
    trace: measured.seal.ok
      ? sealTrace(measured.seal.value, scene, metresPerPixel * alongImage(scene))
      : null,
    warnings,
  };
}

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

function burstOf(
  { shot }: ReductionInputs,
  scene: Scene,
  measured: MeasuredFilm,
  contact: Outcome<Quantity>,
): Outcome<BurstReport> {
  const seal = shot.seals?.muzzle;
  if (!seal) return failure('noSealInView', 'The shot states that no muzzle seal is in view.');
  if (!measured.seal.ok) return measured.seal;
  const { observations, view } = measured.seal.value;
  return locateBurst(observations, scene.clock, view, {
    coverage: shot.coverage,
    exposure: shot.timing.exposure,
    burstBetween: seal.burstBetween,
    ballFrameLimit: contact.ok
      ? firstFrameAfter(contact.value.value, measured.seal.value, scene)
      : null,
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

/** Correlation of burst and exit times through the clock and line time they share. */
function sharedClock(scene: Scene, burst: Quantity, exit: Quantity, line: FlightLine): number {
  const { clock } = scene;
  const lines = clock.lineAt(line.muzzle[0], line.muzzle[1]);
  const covariance =
    burst.value * exit.value * clock.rateRelativeU ** 2 + (lines * clock.lineTime.u) ** 2;
  const product = burst.u * exit.u;
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
