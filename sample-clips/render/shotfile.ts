import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { imageX, imageY } from './projection';
import { randomStream } from './random';
import { AIR, BALL, BAR, LAUNCHER, MUZZLE_U } from './scenario';
import { barMarks } from './scene';
import type { Stage } from './stage';

/** How well a person draws the direction of travel, rad. */
const AXIS_U = 0.003;

/** SHA-256 of the files' bytes one after another. */
export function footageSha256(folder: string, files: readonly string[]): string {
  const hash = createHash('sha256');
  for (const file of files) hash.update(readFileSync(join(folder, file)));
  return hash.digest('hex');
}

/** What a careful person would write down about the shot: never exactly the truth. Its footage by names and hash. */
export function shotFile(stage: Stage, files: readonly string[], sha256: string | null) {
  const { spec, projection, muzzle, setting } = stage;
  // The marks of a series are made once, on the first of its films.
  const clicks = randomStream(spec.series?.seed ?? spec.seed, 'clicks');
  const click = ([x, y]: readonly [number, number], u: number): [number, number] => [
    tenth(x + clicks.normal(0, u)),
    tenth(y + clicks.normal(0, u)),
  ];
  const [from, to] = barMarks(setting);
  const [first = ''] = files;
  const uneven = spec.unevenFrames > 0;
  const [mx, my] = muzzle.origin;
  const [ax, ay] = muzzle.axis;
  return {
    format: 'exitframe-shot',
    version: 5,
    name: spec.name,
    footage: files.length > 1 ? { paths: files, sha256 } : { path: first, sha256 },
    timing: {
      source: uneven ? 'containerTimestamps' : 'recordingRate',
      recordingRate: uneven ? null : spec.rate,
      exposure: spec.exposure,
      readout: spec.readout,
    },
    scale: {
      lengths: [
        {
          from: click(from, BAR.endpointU),
          to: click(to, BAR.endpointU),
          length: BAR.length.value,
          u: BAR.length.u,
          endpointU: BAR.endpointU,
          depthOffset: spec.bar.depth ?? 0,
          depthOffsetU: spec.bar.depthOffsetU,
        },
      ],
      cameraDistance: spec.camera.distance,
    },
    muzzle: {
      point: click([imageX(projection, mx, 0), imageY(projection, my, 0)], MUZZLE_U),
      u: MUZZLE_U,
      axis: spec.launcher.axisStated
        ? drawnAxis(Math.atan2(ay, ax) + clicks.normal(0, AXIS_U))
        : null,
    },
    ball: BALL,
    sound: spec.sound
      ? {
          offset: spec.sound.offset,
          microphone: { distance: spec.sound.microphone },
          backstopDistance: spec.sound.backstop,
        }
      : null,
    air: AIR,
    launcher: spec.series?.launcher ?? LAUNCHER,
    notes: spec.notes,
  };
}

/** An axis as drawn on the film by eye. */
function drawnAxis(angle: number): [number, number] {
  const digits = (c: number): number => Math.round(c * 1e4) / 1e4;
  return [digits(Math.cos(angle)), digits(Math.sin(angle))];
}

function tenth(x: number): number {
  return Math.round(10 * x) / 10;
}
