/**
 * The gas dynamics of a shot, for the truth of rendered series: Euler equations behind and ahead of a leaking ball,
 * an open rear, a seal at the muzzle that opens at a pressure. Written apart from the measuring program, by another
 * scheme, so that film and model may be held against each other.
 */

import type { Through } from './column';
import { type Column, changeOf, endOf, evenColumn, halfway, longestStep, moved } from './column';
import {
  atPiston,
  crossing,
  type EndState,
  fedAt,
  gapFlux,
  leakingFrom,
  leakingInto,
  mouthTo,
  type Room,
} from './ends';

/** Lengths m, mass kg, pressures Pa; what the shot really was. */
export interface RealLauncher {
  readonly bore: number;
  readonly length: number;
  readonly ball: number;
  readonly mass: number;
  /** Of the ball's centre, from the rear seal. */
  readonly start: number;
  readonly residual: number;
  /** Over the pressure outside. */
  readonly burst: number;
  /** Coefficient of discharge of the gap around the ball. */
  readonly discharge: number;
  readonly entranceLoss: number;
  /** Darcy's factor. */
  readonly friction: number;
  readonly room: Room;
}

/** m/s, s after the rear seal, m/s^2. */
export interface RealShot {
  readonly velocity: number;
  readonly exitTime: number;
  readonly burstTime: number;
  /** Just before the ball leaves. */
  readonly acceleration: number;
}

interface State {
  readonly rear: Column;
  /** Null once the ball is in the muzzle. */
  readonly front: Column | null;
  /** Way of the ball, m, and speed, m/s. */
  readonly way: number;
  readonly speed: number;
}

const turned = (end: EndState): EndState => ({ ...end, u: -end.u });

/** Solves a shot on `cells` cells a column. */
export function solveShot(launcher: RealLauncher, cells: number): RealShot {
  const { bore, ball, start, length, residual, room, mass, burst } = launcher;
  const { gamma, constant, temperature } = room;
  const area = (Math.PI / 4) * bore ** 2;
  const plug = ((2 / 3) * ball ** 3) / bore ** 2;
  const gap = launcher.discharge * (1 - (ball / bore) ** 2);
  const still = { rho: residual / (constant * temperature), u: 0, p: residual };

  const mouthOfRoom = mouthTo(room, launcher.entranceLoss);

  /** What passes the ball and the ends, and what the ball feels, m/s^2. */
  const rates = ({ rear, front, speed }: State, open: boolean) => {
    const behind = turned(endOf(rear, 'to'));
    const ahead = front && endOf(front, 'from');
    const passed = passBall(room, behind, ahead, speed, gap);
    const mouth = through(gamma, mouthOfRoom(endOf(rear, 'from')), 1);
    const muzzle = front && turned(endOf(front, 'to'));
    const seal = muzzle && (open ? mouthOfRoom(muzzle) : atPiston(gamma, muzzle, 0));
    return {
      ...passed,
      mouth,
      muzzle: seal && through(gamma, seal, -1),
      sealPressure: seal?.p ?? room.pressure,
      acceleration: (area * (passed.leaving.momentum - passed.entering.momentum)) / mass,
    };
  };
  const after = (state: State, rate: ReturnType<typeof rates>, dt: number): State => {
    const { rear, front, way, speed } = state;
    const { mouth, muzzle, leaving, entering, acceleration } = rate;
    const change = (column: Column, a: Through, b: Through) =>
      moved(column, changeOf(column, a, b, launcher.friction, bore), dt, [a.speed, b.speed]);
    return {
      rear: change(rear, mouth, leaving),
      front: front && muzzle && change(front, entering, muzzle),
      way: way + speed * dt,
      speed: speed + acceleration * dt,
    };
  };

  let state: State = {
    rear: evenColumn(gamma, cells, [0, start - plug / 2], still),
    front: evenColumn(gamma, cells, [start + plug / 2, length], still),
    ...{ way: 0, speed: 0 },
  };
  const leave = length - start;
  const touch = leave - ball / 2;
  const limit = room.pressure + burst;
  let time = 0;
  let before = time;
  let burstTime: number | null = null;
  let pressure = residual;
  for (;;) {
    let now = rates(state, burstTime !== null);
    if (burstTime === null && now.sealPressure >= limit) {
      const share = (limit - pressure) / (now.sealPressure - pressure);
      burstTime = before + share * (time - before);
      now = rates(state, true);
    }
    pressure = now.sealPressure;
    const steps = [longestStep(state.rear, [0, state.speed])];
    if (state.front) steps.push(longestStep(state.front, [state.speed, 0]));
    const dt = Math.min(...steps);
    const once = after(state, now, dt);
    const twice = after(once, rates(once, burstTime !== null), dt);
    const next: State = {
      rear: halfway(state.rear, twice.rear),
      front: state.front && twice.front && halfway(state.front, twice.front),
      way: 0.5 * (state.way + twice.way),
      speed: 0.5 * (state.speed + twice.speed),
    };
    if (!(next.way > -1e-6 && (next.speed > 0 || time < 1e-3))) {
      throw new Error('the ball does not get through the barrel');
    }
    const shareAt = (way: number) => (way - state.way) / (next.way - state.way);
    if (next.way >= leave) {
      const share = shareAt(leave);
      const exitTime = time + share * dt;
      const velocity = state.speed + share * (next.speed - state.speed);
      const acceleration = now.acceleration;
      return { velocity, exitTime, burstTime: burstTime ?? exitTime, acceleration };
    }
    const touches = next.way >= touch;
    if (touches) burstTime ??= time + shareAt(touch) * dt;
    state = touches ? { ...next, front: null } : next;
    before = time;
    time += dt;
  }
}

/**
 * Leak past the ball, from the side of higher pressure, per area of the bore: what leaves the gas behind, and what
 * enters that ahead (null: the room, which nothing is drawn back from).
 */
function passBall(
  { gamma, pressure }: Room,
  behind: EndState,
  ahead: EndState | null,
  speed: number,
  gap: number,
): { readonly leaving: Through; readonly entering: Through } {
  const back = atPiston(gamma, behind, -speed);
  const fore = ahead === null ? { rho: 1, u: speed, p: pressure } : atPiston(gamma, ahead, speed);
  const forwards = back.p > fore.p;
  if (gap === 0 || back.p === fore.p || (ahead === null && !forwards)) {
    return across(gamma, 0, back, fore, speed);
  }
  const into = ahead ?? fore;
  const { leak, from, to } = forwards
    ? leakBetween(gamma, behind, into, -speed, gap, ahead === null)
    : leakBetween(gamma, into, behind, speed, gap, false);
  return forwards ? across(gamma, leak, from, to, speed) : across(gamma, -leak, to, from, speed);
}

/** A leak, kg/(s m^2) of bore, with the states on both sides; the wall between moves at `speed` into the first. */
function leakBetween(
  gamma: number,
  upstream: EndState,
  downstream: EndState,
  speed: number,
  gap: number,
  intoRoom: boolean,
): { readonly leak: number; readonly from: EndState; readonly to: EndState } {
  const sides = (leak: number) => {
    const from = leakingFrom(gamma, upstream, speed, leak);
    const h = (gamma / (gamma - 1)) * (from.p / from.rho) + 0.5 * (leak / from.rho) ** 2;
    const to =
      leak === 0
        ? atPiston(gamma, downstream, -speed)
        : intoRoom
          ? fedAt(gamma, downstream.p, -speed, leak, h)
          : leakingInto(gamma, downstream, -speed, leak, h);
    return { from, to };
  };
  // The leak lowers the difference of pressure that drives it.
  const driven = (leak: number) => {
    const { from, to } = sides(leak);
    return from.p > to.p ? gap * gapFlux(gamma, from, to.p) : 0;
  };
  const leak = crossing((rate) => rate - driven(rate), 0, driven(0));
  return { leak, ...sides(leak) };
}

/** What passes the ball with a leak forwards; what the ball gains the gas ahead does not. */
function across(
  gamma: number,
  leak: number,
  back: EndState,
  fore: EndState,
  speed: number,
): { readonly leaving: Through; readonly entering: Through } {
  const u = -back.u;
  const push = back.p + leak * u;
  const hold = fore.p + leak * fore.u;
  const heat = gamma / (gamma - 1);
  const energy = leak * ((heat * back.p) / back.rho + 0.5 * u ** 2) + back.p * speed;
  return {
    leaving: { mass: leak, momentum: push, energy, speed },
    entering: { mass: leak, momentum: hold, energy: energy - speed * (push - hold), speed },
  };
}

/** What passes the plane of a state, `direction` 1 where the gas lies to its right. */
function through(gamma: number, { rho, u, p }: EndState, direction: 1 | -1): Through {
  const mass = rho * u;
  const energy = u * ((gamma / (gamma - 1)) * p + 0.5 * rho * u ** 2);
  return {
    mass: direction * mass,
    momentum: mass * u + p,
    energy: direction * energy,
    speed: 0,
  };
}
