import { MISTAKE_SCENES } from '../../sample-clips/render/mistakes';
import type { Mistake, MistakeName } from '../../src/app/mistakes';
import { type Estimate, isAvailable, type Reported } from '../../src/core/estimate';
import type { Result } from '../../src/shot/result';
import type { Shot } from '../../src/shot/schema';
import * as expected from './expected';
import { reduceScene, renderScene, type Scene, withoutFrames } from './scene';

/** One side of a mistake: a film, and the shot stated for it. */
interface Side {
  readonly scene: Scene;
  readonly shot: Shot;
}

/** Films of a mistake's pictures, the frames to be seen together in each, and lines to be drawn in it. */
export interface Picture {
  readonly scene: Scene;
  readonly frames: readonly number[];
  readonly lines: Mistake['pictures'][number]['lines'];
  readonly shows: Mistake['pictures'][number]['shows'];
}

interface Case {
  readonly name: MistakeName;
  readonly of: Mistake['of'];
  readonly right: Side;
  readonly wrong: Side;
  /** By the closed form, from what the shot states. */
  expected(right: Result): number;
  /** What the text of the mistake names. */
  readonly inputs: Mistake['inputs'];
  readonly pictures: readonly Picture[];
}

/** Every third frame of the flight: balls that do not touch. */
const APART = [42, 45, 48, 51, 54, 57];
const LOST = { after: 47, count: 1 };
const TYPED_RATE = { value: 10_000, u: 0.5 };

const asStated = (scene: Scene): Side => ({ scene, shot: scene.shot });
const picture = (
  scene: Scene,
  shows: Picture['shows'],
  frames: readonly number[],
  lines: Picture['lines'] = [],
): Picture => ({ scene, shows, frames, lines });

/** All mistakes, their scenes rendered once. */
export function cases(): readonly Case[] {
  const base = renderScene(MISTAKE_SCENES.base);
  const behind = renderScene(MISTAKE_SCENES.barBehind);
  const long = renderScene(MISTAKE_SCENES.longExposure);
  const still = renderScene(MISTAKE_SCENES.phone);
  const rolling = renderScene(MISTAKE_SCENES.rollingPhone);
  const lost = withoutFrames(base, LOST.after, LOST.count);

  const rate = stated(base.shot.timing.recordingRate).value;
  const distance = stated(behind.shot.scale.cameraDistance).value;
  const [bar] = behind.shot.scale.lengths;
  const { muzzle } = behind.shot;
  if (bar === undefined || muzzle === null) throw new Error('The scene states no bar or muzzle.');
  const depth = bar.depthOffset;
  const lineTime = rolling.shot.timing.readout.lineTime.value;
  const exposure = stated(long.shot.timing.exposure).value;
  const lines = [
    { x: muzzle.point[0], is: 'muzzle' as const },
    { x: bar.from[0], is: 'mark' as const },
  ];
  return [
    {
      name: 'wrongRate',
      of: 'speed',
      right: asStated(base),
      wrong: side(base, { timing: { ...base.shot.timing, recordingRate: TYPED_RATE } }),
      expected: () => expected.wrongRate(TYPED_RATE.value, rate),
      inputs: { typed: TYPED_RATE.value, rate },
      pictures: [picture(base, 'both', APART)],
    },
    {
      name: 'lostFrames',
      of: 'speed',
      right: side(lost, { timing: { ...base.shot.timing, droppedFrames: [LOST] } }),
      wrong: asStated(lost),
      expected({ positions }) {
        const used = positions.filter((one) => one.used);
        const before = used.filter(({ frame }) => frame <= LOST.after).length;
        return expected.lostFrames(before, used.length - before, LOST.count);
      },
      inputs: { after: LOST.after, count: LOST.count },
      pictures: [picture(base, 'right', APART), picture(lost, 'wrong', APART)],
    },
    {
      name: 'wrongPlane',
      of: 'speed',
      right: asStated(behind),
      wrong: side(behind, {
        scale: { ...behind.shot.scale, lengths: [{ ...bar, depthOffset: 0 }] },
      }),
      expected: () => expected.wrongPlane(depth, distance),
      inputs: { depth, distance },
      pictures: [picture(base, 'right', [50]), picture(behind, 'wrong', [50])],
    },
    {
      name: 'parallax',
      of: 'exitTime',
      right: asStated(behind),
      wrong: side(behind, {
        muzzle: { ...muzzle, point: [bar.from[0], muzzle.point[1]] },
      }),
      expected({ scale, exitVelocity }) {
        const aside = ((behind.stage.spec.image.width - 1) / 2 - muzzle.point[0]) * scale.value;
        return expected.parallax(aside, depth, distance) / measured(exitVelocity).value;
      },
      inputs: { depth, distance },
      pictures: [
        picture(base, 'right', [43], lines.slice(0, 1)),
        picture(behind, 'wrong', [43], lines),
      ],
    },
    {
      name: 'rollingShutter',
      of: 'speed',
      right: asStated(rolling),
      wrong: side(rolling, {
        timing: {
          ...rolling.shot.timing,
          readout: { ...rolling.shot.timing.readout, lineTime: { value: 0, u: 0 } },
        },
      }),
      expected: ({ scale, exitVelocity }) =>
        expected.rollingShutter(measured(exitVelocity).value / scale.value, lineTime),
      inputs: { lineTime },
      pictures: [
        picture(still, 'right', [23, 26, 29, 32]),
        picture(rolling, 'wrong', [23, 26, 29, 32]),
      ],
    },
    {
      name: 'blur',
      of: 'centreU',
      right: asStated(base),
      wrong: asStated(long),
      expected: ({ scale, exitVelocity }) =>
        expected.blurGrowth(
          (measured(exitVelocity).value * exposure) / scale.value,
          long.stage.spec.camera.blur,
        ),
      inputs: { short: stated(base.shot.timing.exposure).value, long: exposure },
      pictures: [picture(base, 'right', [46]), picture(long, 'wrong', [46])],
    },
  ];
}

/** A scene's shot, changed in one part. */
const side = (scene: Scene, change: Partial<Shot>): Side => ({
  scene,
  shot: { ...scene.shot, ...change },
});

/** Reduces both sides of a mistake. */
export async function sized(one: Case): Promise<Omit<Mistake, 'pictures'>> {
  const [right, wrong] = [
    await reduceScene(one.right.scene, one.right.shot),
    await reduceScene(one.wrong.scene, one.wrong.shot),
  ];
  const { truth } = one.right.scene.stage;
  return {
    ...{ name: one.name, of: one.of, inputs: one.inputs },
    truth: { speed: truth.velocity, exitTime: truth.exitTime },
    right: sideOf(right),
    wrong: sideOf(wrong),
    expected: one.expected(right),
  };
}

function sideOf(result: Result): Mistake['right'] {
  const used = result.positions.filter((one) => one.used);
  const own = used.map(({ us }) => us ?? 0).sort((a, b) => a - b);
  return {
    speed: estimate(measured(result.exitVelocity)),
    exitTime: estimate(measured(result.exitTime)),
    centreU: own[own.length >> 1] ?? 0,
    frames: used.length,
    warnings: result.warnings,
  };
}

const estimate = ({ value, u }: Estimate): Estimate => ({ value, u });

function measured(reported: Reported) {
  if (!isAvailable(reported)) throw new Error(reported.unavailable.message);
  return reported;
}

function stated(one: Estimate | null): Estimate {
  if (one === null) throw new Error('The scene does not state it.');
  return one;
}
