import type { StaticScene } from './canvas';
import { dragPerLength, type Flight, fly } from './motion';
import {
  imageX,
  imageY,
  type MuzzleFrame,
  onFlightPlane,
  type Projection,
  toWorld,
} from './projection';
import { randomStream } from './random';
import { type ClipSpec, drawTruth, type Truth } from './scenario';
import { type Setting, staticScene } from './scene';
import { Seal } from './seal';
import { frameTimes } from './shutter';

const GRAVITY = 9.81;

/** One shot set up: everything that is there, still and moving, ready to be filmed. */
export interface Stage {
  readonly spec: ClipSpec;
  readonly truth: Truth;
  readonly projection: Projection;
  readonly muzzle: MuzzleFrame;
  readonly setting: Setting;
  readonly still: StaticScene;
  readonly seal: Pick<Seal, 'sheets' | 'fastest' | 'pieces'>;
  /** Null: no ball comes. */
  readonly flight: Flight | null;
  /** Middle of each frame's exposure at the first line, s. */
  readonly times: Float64Array;
}

export function setStage(spec: ClipSpec): Stage {
  const shot = randomStream(spec.seed, 'inputs');
  const inputs = spec.series ? randomStream(spec.series.seed, 'inputs') : shot;
  const truth = drawTruth(spec, inputs, shot);
  const { width, height } = spec.image;
  const projection: Projection = {
    focal: truth.cameraDistance / truth.metresPerPixel,
    distance: truth.cameraDistance,
    centre: [(width - 1) / 2, (height - 1) / 2],
  };
  const [mx, my] = spec.launcher.muzzle;
  const muzzle: MuzzleFrame = {
    origin: onFlightPlane(
      projection,
      mx + inputs.uniform(-0.5, 0.5),
      my + inputs.uniform(-0.5, 0.5),
    ),
    axis: [Math.cos(spec.launcher.axisAngle), Math.sin(spec.launcher.axisAngle)],
  };
  const times = frameTimes(spec, truth);
  const until = (times[times.length - 1] as number) + 0.02;
  const [ax, ay] = muzzle.axis;
  const flight = spec.shot
    ? fly(
        {
          exitTime: truth.exitTime,
          velocity: truth.velocity,
          boreAcceleration: truth.boreAcceleration,
          drag: dragPerLength(
            spec.shot.dragCoefficient,
            truth.airDensity,
            truth.ballRadius,
            truth.ballMass,
          ),
          muzzleZone: spec.shot.muzzleZone,
          gravity: [GRAVITY * ay, GRAVITY * ax],
        },
        until,
      )
    : null;
  const seal = new Seal(
    {
      law: {
        onset: truth.onsetTime,
        burst: truth.burstTime,
        opening: spec.seal.opening,
        height: spec.seal.height,
        radius: truth.boreRadius,
      },
      count: spec.seal.fragments,
      speed: spec.seal.speed,
      ball: flight ? { flight, radius: truth.ballRadius } : null,
      until,
      down: [ay, ax],
    },
    projection,
    muzzle,
    randomStream(spec.seed, 'seal'),
  );
  const [bx, by] = onFlightPlane(projection, ...spec.bar.centre);
  const setting: Setting = {
    width,
    height,
    projection,
    muzzle,
    boreRadius: truth.boreRadius,
    tubeRadius: 0.0195,
    ringRadius: spec.launcher.ringDiameter / 2,
    ringLength: 0.018,
    clearTube: spec.launcher.clearTube,
    bar: { centre: [bx, by], depth: truth.barDepth, length: truth.barLength },
  };
  const still = staticScene(setting, randomStream(spec.series?.seed ?? spec.seed, 'texture'));
  return { spec, truth, projection, muzzle, setting, still, seal, flight, times };
}

/** World place of the ball's centre at time t. */
export function ballAt(stage: Stage, t: number): readonly [number, number, number] {
  const [s, q] = stage.flight?.position(t) ?? [Number.NEGATIVE_INFINITY, 0];
  return toWorld(stage.muzzle, s, q, 0);
}

/** Image place of the ball's centre at time t, px. */
export function ballInImage(stage: Stage, t: number): [number, number] {
  const [x, y, z] = ballAt(stage, t);
  return [imageX(stage.projection, x, z), imageY(stage.projection, y, z)];
}
