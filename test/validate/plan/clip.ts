import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { reduceFile } from '../../../src/headless/reduceFile';
import { lightingAt } from '../../../src/plan/light';
import { plannedShot } from '../../../src/plan/plannedShot';
import type { Plan } from '../../../src/shot/planning';
import type { Result } from '../../../src/shot/result';
import { transcode } from '../codec';
import { displacedShare, dragFactor, fly } from '../estimate/positionsFlight';
import { type RenderedFrame, renderFilm } from '../render/film';
import type { Random } from '../render/random';
import { drawLook, inFullView } from '../shot';
import type { ClipPlan } from './plans';

const STILL_FRAMES = 5;
const CELLS = 4;
/** Mean place over the exposure, by three nodes of Gauss and Legendre. */
const NODES = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)] as const;
const SHARES = [5 / 18, 8 / 18, 5 / 18] as const;
/** kg/m^3, at the temperature and pressure of the plans. */
const AIR_DENSITY = 1.199;
/** As the estimator states them beforehand. */
const LOSS_SHARE = { value: 0.5, u: 0.6 } as const;
const REACH = [1.5, 3.5] as const;
const DRAG = { value: 0.47, u: 0.05 } as const;
/** Constant rate factor of film kept with loss. */
const CRF = 23;

/** A clip made from a plan, its shot file that of the plan, reduced as the headless command does. */
export async function reduceClip(clip: ClipPlan, random: Random): Promise<Result> {
  const shot = plannedShot(clip.plan);
  if (!shot.ok) throw new Error(shot.reason.message);
  const folder = await mkdtemp(join(tmpdir(), 'exitframe-plan-'));
  try {
    const film = await coded(renderClip(clip, random), clip.plan.picture.coded);
    await writeFile(join(folder, 'clip.mkv'), film);
    const file = join(folder, 'clip.shot.json');
    const footage = { path: 'clip.mkv', sha256: null };
    await writeFile(file, JSON.stringify({ ...shot.value, footage, seals: null }));
    return (await reduceFile(file)).result;
  } finally {
    await rm(folder, { recursive: true });
  }
}

/** The film as a file: without loss, or with. */
function coded(frames: readonly RenderedFrame[], lossy: boolean): Promise<Uint8Array> {
  const [first] = frames;
  if (first === undefined) throw new Error('A clip needs frames.');
  const { width, height } = first;
  const size = width * height;
  const raw = new Uint8Array(frames.length * size);
  frames.forEach(({ data }, i) => {
    raw.set(data, i * size);
  });
  const input = ['-f', 'rawvideo', '-pix_fmt', 'gray', '-s', `${width}x${height}`];
  const how = lossy
    ? ['-c:v', 'libx264', '-preset', 'medium', '-crf', String(CRF), '-threads', '1']
    : ['-c:v', 'ffv1'];
  return transcode(
    [...input, '-framerate', '30', '-i', '/in/from', ...how, '-f', 'matroska', '/out/to'],
    raw,
  );
}

function renderClip({ plan, surface }: ClipPlan, random: Random): RenderedFrame[] {
  const { camera, view, picture } = plan;
  const { width, height } = camera;
  const metresPerPixel = view.across / width;
  const radius = plan.ball.diameter.value / 2 / metresPerPixel;
  const muzzleX = view.beforeMuzzle / metresPerPixel - 0.5;
  const y = (height - 1) / 2;
  const path = drawPath(plan, random);
  const rate = camera.rate.value;
  const exposure = camera.exposure.value;
  const { contrastToNoise } = lightingAt(picture.light, exposure);
  const look = drawLook({ radius, contrastToNoise, surface }, random);
  const start = random.uniform(0, 1) / rate;
  const sightings = [];
  for (let i = 0; ; i++) {
    const middle = start + i / rate;
    const [before = 0, at = 0, after = 0] = path(
      NODES.map((node) => middle + (node * exposure) / 2),
    );
    const x = muzzleX + (SHARES[0] * before + SHARES[1] * at + SHARES[2] * after) / metresPerPixel;
    const sweep = (after - before) / (NODES[2] - NODES[0]) / metresPerPixel / 0.5;
    if (x > width + radius + sweep) break;
    sightings.push(inFullView({ ...look.ball, x, y, sweep: [sweep, 0] }));
  }
  // The launcher's end stands before the ball, which comes out of it.
  const flange = { normal: [-1, 0] as const, offset: -muzzleX, level: random.uniform(25, 60) };
  return renderFilm(
    {
      ...{ width, height, softness: picture.softness, camera: look.camera, sightings },
      backdrop: { ...look.backdrop, flange },
      ...{ before: STILL_FRAMES, after: STILL_FRAMES, cells: CELLS },
    },
    random,
  );
}

/** Distances from the muzzle plane, m, at rising times after the exit, s; what the air does is drawn. */
function drawPath(plan: Plan, random: Random): (times: readonly number[]) => number[] {
  const ball = {
    diameter: plan.ball.diameter.value,
    mass: plan.ball.mass.value,
    density: AIR_DENSITY,
  };
  const flight = {
    velocity: plan.speed.value,
    motion: 'drag',
    drag: dragFactor(ball, DRAG.value + DRAG.u * random.normal(0, 1)),
    loss: displacedShare(ball) * (LOSS_SHARE.value + LOSS_SHARE.u * random.normal(0, 1)),
    shape: random.pick<'straight' | 'exponential'>(['straight', 'exponential']),
    reach: ball.diameter * random.uniform(...REACH),
  } as const;
  return (times) => fly(flight, times);
}
