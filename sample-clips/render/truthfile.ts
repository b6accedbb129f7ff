import { sphereOutline } from './ball';
import { crossingsAt, SUB } from './canvas';
import { imageX, imageY } from './projection';
import { barMarks } from './scene';
import { lineAt } from './shutter';
import { arrivals } from './sound';
import { ballAt, ballInImage, type Stage } from './stage';

/** The true answer of a clip, beside it in `truth.json`. */
export function truthFile(stage: Stage): object {
  const { spec, truth, muzzle, projection, flight } = stage;
  const contact = flight ? timeAt(stage, -truth.ballRadius) : null;
  return {
    about:
      'Rendered, not filmed: the true values of an invented shot of the (fictional) Brinewick Teaching Laboratory. SI units, pixels of the upright image, times in s after the middle of frame 0 at the first line read.',
    name: spec.name,
    exitVelocity: flight ? truth.velocity : null,
    exitTime: flight ? truth.exitTime : null,
    sealBurst: truth.burstTime,
    bulgeOnset: truth.onsetTime,
    lead: flight ? truth.exitTime - truth.burstTime : null,
    contact,
    contactLead: contact === null ? null : contact - truth.burstTime,
    metresPerPixel: truth.metresPerPixel,
    cameraDistance: truth.cameraDistance,
    axis: muzzle.axis,
    muzzlePoint: [imageX(projection, muzzle.origin[0], 0), imageY(projection, muzzle.origin[1], 0)],
    frameRate: truth.rate,
    frameTimes: spec.unevenFrames > 0 ? [...stage.times] : null,
    lineTime: truth.lineTime,
    exposure: truth.exposure,
    opticalBlur: spec.camera.blur,
    dragCoefficient: spec.shot?.dragCoefficient ?? null,
    airDensity: truth.airDensity,
    ball: { diameter: 2 * truth.ballRadius, mass: truth.ballMass },
    muzzleZone: spec.shot?.muzzleZone ?? null,
    scaleBar: {
      marks: barMarks(stage.setting),
      length: truth.barLength,
      depthOffset: truth.barDepth,
    },
    sound: soundTruth(stage),
    fragments: {
      count: stage.seal.pieces.length,
      fasterThanBall: flight
        ? stage.seal.pieces.filter((piece) => piece.startSpeed > truth.velocity).length
        : null,
      startSpeeds: stage.seal.pieces.map((piece) => round(piece.startSpeed, 2)),
    },
    frames: flight ? [...stage.times].map((_, i) => frameTruth(stage, i)) : [],
  };
}

/** When the ball's centre is at a distance from the muzzle plane, by halving. */
export function timeAt(stage: Stage, s: number): number {
  let before = stage.truth.exitTime - 0.01 - Math.abs(s) / Math.max(stage.truth.velocity, 1);
  let after = stage.truth.exitTime + 0.01 + (2 * Math.abs(s)) / Math.max(stage.truth.velocity, 1);
  for (let k = 0; k < 80; k++) {
    const middle = (before + after) / 2;
    const reached = (stage.flight?.position(middle)[0] ?? Number.NEGATIVE_INFINITY) >= s;
    if (reached) after = middle;
    else before = middle;
  }
  return (before + after) / 2;
}

function soundTruth(stage: Stage): object | null {
  const { spec, truth } = stage;
  if (!spec.sound || !stage.flight) return null;
  const impact = timeAt(stage, truth.backstop - truth.ballRadius);
  return {
    impact,
    heard: arrivals(truth, impact),
    soundSpeed: truth.soundSpeed,
    microphoneDistance: truth.microphone,
    backstopDistance: truth.backstop,
    offset: truth.soundOffset,
    about:
      'Impact: the leading point reaches the backstop. Both sounds travel the microphone distance. heard: on the sound track, its start at the time of frame 0; offset is added to a time on the sound track to get the time on the film.',
  };
}

/** Ball centre in frame i, at the middle of the exposure of the line it is on. */
function frameTruth(stage: Stage, i: number): object {
  const { spec, truth } = stage;
  const { width, height } = spec.image;
  const start = stage.times[i] as number;
  let time = start;
  for (let k = 0; k < 60 && truth.lineTime > 0; k++) {
    const [x, y] = ballInImage(stage, time);
    const line = lineAt(spec.readout.direction, width, height, x, y);
    time = start + truth.lineTime * line;
  }
  const [x, y] = ballInImage(stage, time);
  const [s, q] = stage.flight?.position(time) ?? [0, 0];
  const [v] = stage.flight?.velocity(time) ?? [0];
  return {
    frame: i,
    time,
    x: round(x, 5),
    y: round(y, 5),
    s,
    q,
    v,
    visible: round(visibleShare(stage, time), 4),
    blur: round((v * truth.exposure) / truth.metresPerPixel, 4),
  };
}

/** Share of the ball's disc in the image and not hidden by the launcher or by film, at time t. */
function visibleShare(stage: Stage, t: number): number {
  const { width, height } = stage.spec.image;
  const outline = sphereOutline(stage.projection, ballAt(stage, t), stage.truth.ballRadius);
  const { before } = stage.seal.sheets(t);
  let all = 0;
  let seen = 0;
  for (let y = outline.top + 0.05; y < outline.bottom; y += 0.25) {
    const ends = outline.row(y);
    if (!ends) continue;
    const crossings = before.map((sheet) => crossingsAt(sheet.points, sheet.points.length / 2, y));
    for (let x = ends[0]; x < ends[1]; x += 0.25) {
      all++;
      const inside = x > -0.5 && x < width - 0.5 && y > -0.5 && y < height - 0.5;
      if (!inside || crossings.some((row) => within(row, x))) continue;
      const sample = Math.floor((y + 0.5) * SUB) * width * SUB + Math.floor((x + 0.5) * SUB);
      if ((stage.still.through[sample] as number) > 0.5) seen++;
    }
  }
  return all === 0 ? 0 : seen / all;
}

function within(crossings: readonly number[], x: number): boolean {
  return crossings.filter((c) => c < x).length % 2 === 1;
}

function round(x: number, digits: number): number {
  return Math.round(x * 10 ** digits) / 10 ** digits;
}
