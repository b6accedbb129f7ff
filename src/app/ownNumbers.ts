import type { Clock } from '../clock/clock';
import { type Estimate, isAvailable, type Reported } from '../core/estimate';
import type { Outcome } from '../core/reason';
import type { ScaleReport } from '../geometry/scale';
import type { Position, Result } from '../shot/result';
import type { ShotDraft } from './draft';

/** Everything of the open shot that formulas are filled in with; null: not there yet. */
export interface OwnShot {
  readonly draft: ShotDraft | null;
  readonly frameCount: number | null;
  readonly clock: Outcome<Pick<Clock, 'frameInterval' | 'rateRelativeU'>> | null;
  readonly scale: Outcome<Pick<ScaleReport, 'value' | 'u' | 'lengths'>> | null;
  readonly result: Result | null;
}

/** A shot's own numbers by what they are, SI and pixels with standard uncertainties; null: not known yet. */
export type OwnNumbers = ReturnType<typeof ownNumbers>;
export type OwnNumber = keyof OwnNumbers;

/** Never holds a number that is none. */
export function ownNumbers({ draft, frameCount, clock, scale, result }: OwnShot) {
  const interval = clock?.ok
    ? sound(clock.value.frameInterval, clock.value.frameInterval * clock.value.rateRelativeU)
    : null;
  const used = result === null ? [] : result.positions.filter(isPlaced);
  const [first, last] = [used[0], used[used.length - 1]];
  const apart = first !== undefined && last !== undefined && last.frame > first.frame;
  return {
    frames: frameCount === null ? null : sound(frameCount, 0),
    interval,
    duration: derived([interval], (dt) =>
      frameCount === null ? null : [(frameCount - 1) * dt.value, (frameCount - 1) * dt.u],
    ),
    rate: derived([interval], (dt) => [1 / dt.value, dt.u / dt.value ** 2]),
    ...scaleNumbers(draft, scale),
    ...centreNumbers(used[used.length >> 1], result),
    exposure: stated(draft?.timing.exposure),
    blur: derived(
      [reported(result?.exitVelocity), stated(draft?.timing.exposure), stated(result?.scale)],
      // The scale is in the speed as well and falls out again.
      (v, exposure, k) => times((v.value * exposure.value) / k.value, exposure.u / exposure.value),
    ),
    exitTime: reported(result?.exitTime),
    burstTime: reported(result?.sealBurst),
    lead: reported(result?.lead),
    startPlace: apart ? sound(first.s, first.us) : null,
    endPlace: apart ? sound(last.s, last.us) : null,
    startTime: apart ? sound(first.time, 0) : null,
    endTime: apart ? sound(last.time, 0) : null,
    meanSpeed: apart ? meanSpeed(first, last, stated(result?.scale)) : null,
    exitVelocity: reported(result?.exitVelocity),
    ...launcherNumbers(draft),
  } as const;
}

function scaleNumbers(draft: ShotDraft | null, scale: OwnShot['scale']) {
  const length = draft?.scale.lengths.find((one) => one.length !== null);
  const read = scale?.ok ? scale.value : null;
  const one = read?.lengths[0];
  // One length alone has its own part of the uncertainty; with several each has its own scale.
  const perPixel = read === null ? null : sound(read.value, read.u);
  return {
    length: length === undefined ? null : sound(length.length, length.u),
    lengthPixels:
      length === undefined || one === undefined
        ? null
        : sound(one.pixels, Math.SQRT2 * length.endpointU),
    depth: length === undefined ? null : sound(length.depthOffset, length.depthOffsetU),
    cameraDistance: stated(draft?.scale.cameraDistance),
    oneScale: one === undefined ? null : sound(one.value, one.u),
    perPixel,
  };
}

/** How far one centre is from the muzzle plane, in pixels and in metres. */
function centreNumbers(position: Placed | undefined, result: Result | null) {
  const k = stated(result?.scale);
  if (position === undefined || k === null) return { centrePixels: null, centre: null };
  return {
    centrePixels: sound(position.s / k.value, position.us / k.value),
    centre: sound(position.s, Math.hypot(position.us, (position.s * k.u) / k.value)),
  };
}

/** The frame `centre` is of. */
export function centreFrame(result: Result | null): number | null {
  const used = result === null ? [] : result.positions.filter(isPlaced);
  return used[used.length >> 1]?.frame ?? null;
}

function meanSpeed(first: Placed, last: Placed, scale: Estimate | null): Estimate | null {
  const time = last.time - first.time;
  const value = (last.s - first.s) / time;
  const shared = scale === null ? 0 : (value * scale.u) / scale.value;
  return sound(value, Math.hypot(first.us / time, last.us / time, shared));
}

function launcherNumbers(draft: ShotDraft | null) {
  const launcher = draft?.launcher ?? null;
  const [pressure, mass] = [stated(draft?.air.pressure), stated(draft?.ball.mass)];
  const barrel = stated(launcher?.barrelLength);
  const boreArea = derived([stated(launcher?.boreDiameter)], (d) =>
    times((Math.PI / 4) * d.value ** 2, (2 * d.u) / d.value),
  );
  return {
    pressure,
    mass,
    barrel,
    boreArea,
    mostSpeed: derived([pressure, boreArea, barrel, mass], (p, a, l, m) =>
      times(
        Math.sqrt((2 * p.value * a.value * l.value) / m.value),
        Math.hypot(...[p, a, l, m].map((one) => one.u / one.value)) / 2,
      ),
    ),
  };
}

type Placed = Position & { readonly s: number; readonly us: number };
const isPlaced = (position: Position): position is Placed =>
  position.used && position.s !== null && position.us !== null;

/** An estimate of finite numbers, or null. */
function sound(value: number | null, u: number | null): Estimate | null {
  return value !== null && u !== null && Number.isFinite(value) && Number.isFinite(u)
    ? { value, u }
    : null;
}

const stated = (estimate: Estimate | null | undefined): Estimate | null =>
  estimate ? sound(estimate.value, estimate.u) : null;

const reported = (one: Reported | Result['sealBurst'] | undefined): Estimate | null =>
  one !== undefined && 'value' in one && isAvailable(one) ? sound(one.value, one.u) : null;

/** Value and u from a value and its relative u. */
const times = (value: number, relativeU: number): readonly [number, number] => [
  value,
  Math.abs(value) * relativeU,
];

/** What follows from other numbers, once all of them are known. */
function derived<Inputs extends readonly (Estimate | null)[]>(
  inputs: readonly [...Inputs],
  work: (...of: { [K in keyof Inputs]: Estimate }) => readonly [value: number, u: number] | null,
): Estimate | null {
  if (inputs.includes(null)) return null;
  const [value, u] = work(...(inputs as { [K in keyof Inputs]: Estimate })) ?? [null, null];
  return sound(value, u);
}
