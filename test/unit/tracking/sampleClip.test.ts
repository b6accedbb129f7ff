import { readFile } from 'node:fs/promises';
import { beforeAll, describe, expect, test } from 'vitest';
import type { GreyFrame } from '../../../src/core/frame';
import { footageFile, nodePlatform } from '../../../src/footage/node/index';
import { openFootage } from '../../../src/footage/open';
import { buildBackground } from '../../../src/image/background';
import { findCandidates } from '../../../src/image/candidates';
import { measureCentre } from '../../../src/image/centre';
import { learnBall } from '../../../src/image/learnBall';
import { loadVision } from '../../../src/image/opencv/vision';
import type { BallModel, CentreMeasurement } from '../../../src/image/types';
import { linkTrack } from '../../../src/tracking/link';
import type { Track } from '../../../src/tracking/types';

const FOLDER = 'sample-clips/a-clean';

interface Truth {
  readonly axis: readonly [number, number];
  readonly frameRate: number;
  readonly exposure: number;
  readonly metresPerPixel: number;
  readonly cameraDistance: number;
  readonly muzzlePoint: readonly [number, number];
  readonly ball: { readonly diameter: number };
  readonly frames: readonly {
    readonly frame: number;
    readonly x: number;
    readonly y: number;
    readonly visible: number;
  }[];
}

/** The clip's compressed frames through the parts that find the ball, against the renderer's centres. */
describe('the clean sample clip', () => {
  let truth: Truth;
  let track: Track;
  let errors: { frame: number; dx: number; dy: number; measured: CentreMeasurement }[];

  beforeAll(async () => {
    truth = JSON.parse(await readFile(`${FOLDER}/truth.json`, 'utf8'));
    const source = await openFootage([await footageFile(`${FOLDER}/clip.mp4`)], nodePlatform);
    const frames: GreyFrame[] = [];
    try {
      for await (const frame of source.frames({ start: 0, end: source.info.frameCount })) {
        frames.push(frame);
      }
    } finally {
      await source.close();
    }
    const background = buildBackground(frames.filter((_, i) => i % 3 === 0));
    if (!background.ok) throw new Error(background.reason.message);
    const { width, height } = source.info;
    const atRest: BallModel = {
      // As well as a scale drawn by hand gives it.
      radius: (1.002 * truth.ball.diameter) / 2 / truth.metresPerPixel,
      blur: [0, 0],
      region: [0, 0, width, height],
      camera: {
        centre: [(width - 1) / 2, (height - 1) / 2],
        distance: truth.cameraDistance / truth.metresPerPixel,
      },
    };
    const vision = await loadVision();
    const linked = linkTrack(
      frames.map((frame) => ({
        frame: frame.index,
        candidates: findCandidates(frame, background.value, 1, atRest, vision),
      })),
      {
        axis: null,
        muzzle: truth.muzzlePoint,
        radius: atRest.radius,
        timeOf: (frame) => frame / truth.frameRate,
        placed: [],
        seeds: [],
      },
    );
    if (!linked.ok) throw new Error(linked.reason.message);
    track = linked.value;
    // The exposure as the camera states it, a twentieth off.
    const reach = 0.95 * truth.exposure * track.speed;
    const flying = { ...atRest, blur: [track.axis[0] * reach, track.axis[1] * reach] as const };
    const measureAll = (ball: BallModel) =>
      track.points.flatMap(({ frame, at }) => {
        const found = measureCentre(frames[frame] as GreyFrame, background.value, at, ball);
        return found.ok ? [{ frame, measured: found.value }] : [];
      });
    const alone = measureAll(flying);
    const learned = learnBall(
      flying,
      alone.map(({ measured }) => measured),
    );
    errors = measureAll(learned).map(({ frame, measured }) => {
      const place = truth.frames.find((entry) => entry.frame === frame);
      if (place === undefined) throw new Error(`no truth for frame ${frame}`);
      return { frame, measured, dx: measured.x - place.x, dy: measured.y - place.y };
    });
  }, 240_000);

  test('the track is the ball, as long as it is in view', () => {
    const inView = truth.frames.filter(({ visible }) => visible > 0.6).map(({ frame }) => frame);
    const found = new Set(track.points.map(({ frame }) => frame));
    expect(inView.length).toBeGreaterThan(15);
    expect(inView.filter((frame) => !found.has(frame))).toEqual([]);
    const [ax, ay] = track.axis;
    expect(Math.abs(ax * truth.axis[1] - ay * truth.axis[0])).toBeLessThan(2e-3);
  });

  test('centres agree with the truth, and their scatter with their uncertainty', () => {
    const whole = errors.filter(({ measured }) => measured.visible > 0.9);
    expect(whole.length).toBeGreaterThan(14);
    const mean = (f: (e: (typeof errors)[number]) => number) =>
      whole.reduce((sum, e) => sum + f(e), 0) / whole.length;
    const bias = [mean(({ dx }) => dx), mean(({ dy }) => dy)] as const;
    expect(Math.hypot(...bias)).toBeLessThan(0.08);
    const scatter = Math.sqrt(mean(({ dx, dy }) => (dx - bias[0]) ** 2 + (dy - bias[1]) ** 2) / 2);
    expect(scatter).toBeLessThan(0.04);
    const normalised = Math.sqrt(
      mean(
        ({ dx, dy, measured }) =>
          ((dx - bias[0]) ** 2 / measured.varX + (dy - bias[1]) ** 2 / measured.varY) / 2,
      ),
    );
    expect(normalised).toBeGreaterThan(0.4);
    expect(normalised).toBeLessThan(1.4);
  });

  test('coming out of the tube and leaving the frame it is no worse than it says', () => {
    const partly = errors.filter(({ measured }) => measured.visible <= 0.9);
    expect(partly.length).toBeGreaterThan(0);
    for (const { dx, measured } of partly) {
      expect(Math.abs(dx)).toBeLessThan(0.15);
      expect(Math.abs(dx)).toBeLessThan(4 * Math.sqrt(measured.varX));
    }
  });
});
