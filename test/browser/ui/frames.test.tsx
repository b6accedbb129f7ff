import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { ExitframeError } from '../../../src/core/reason';
import type { FrameInspection } from '../../../src/image/types';
import type { ReductionInputs } from '../../../src/reduction/types';
import type { Position } from '../../../src/shot/result';
import { exampleInspection } from '../../fixtures/inspection';
import { exampleReduction } from '../../fixtures/reduction';
import { findingsIn } from './accessibility';
import { type MountedPage, measuredClip, mountPage, openClip } from './mountPage';

let mounted: MountedPage;
let host: HTMLElement;

beforeEach(async () => {
  mounted = await mountPage();
  ({ host } = mounted);
});
afterEach(() => mounted.unmount());

const section = () => page.getByRole('region', { name: 'Frame by frame' });
const button = (name: string | RegExp) => section().getByRole('button', { name });
const goTo = (step: 'ball' | 'result') => {
  mounted.desk.step.value = step;
};
const frameNow = () => mounted.session.player.current.value;
/** A figure's value by its name. */
const figure = (name: string) =>
  [...host.querySelectorAll('.fit-numbers dt')].find((one) => one.textContent === name)
    ?.nextElementSibling?.textContent;

const HIDDEN = {
  code: 'tooLittleSeen',
  message: 'Only 12 % of the outline is seen.',
  remedy: 'Place the centre by hand.',
};

/** Frames 2 and 7 are refused, without a centre. */
function refusing(inputs: ReductionInputs) {
  const reduction = exampleReduction(inputs);
  const positions = reduction.result.positions.map((one): Position => {
    const refused = (one.frame === 2 || one.frame === 7) && !one.manual;
    if (!refused) return one;
    const unknown = { x: null, y: null, ux: null, uy: null, cov: null, s: null, us: null };
    return { ...one, ...unknown, visible: 0.12, used: false, why: HIDDEN };
  });
  return { ...reduction, result: { ...reduction.result, positions } };
}

async function measured(frame = 4) {
  mounted.crew.conclude = async (inputs) => refusing(inputs);
  await measuredClip(mounted.session);
  goTo('ball');
  mounted.desk.pick(frame);
}

const refused = (frame: number): FrameInspection => ({
  ...exampleInspection(frame),
  measurement: { ok: false, reason: HIDDEN },
  model: null,
  residual: null,
  weight: null,
  outline: [],
});

describe('frame by frame', () => {
  it('says that nothing is measured yet, and stays away where no frame is looked at', async () => {
    await openClip(mounted.session);
    goTo('ball');
    await expect.element(section().getByText('Nothing is measured yet.')).toBeVisible();
    goTo('result');
    await expect.element(section()).not.toBeInTheDocument();
  });

  it('shows film, outline, what is left over and the figures of a used frame', async () => {
    await measured();
    await expect
      .element(section().getByRole('heading', { level: 3 }))
      .toHaveTextContent('Frame 4: used');
    await expect
      .element(
        page.getByRole('img', {
          name: 'What the model leaves over in frame 4, 2.0 times the noise',
        }),
      )
      .toBeVisible();
    await expect
      .element(page.getByRole('img', { name: /^Frame 4 around the ball, 19 by 19 pixels/ }))
      .toBeVisible();
    // 35 of 48 stretches of the outline have both ends seen.
    expect(host.querySelector('.fit-picture .fit-seen .line')?.getAttribute('d')).toMatch(/^M/);
    expect(host.querySelector('.fit-picture .fit-unseen .line')).not.toBeNull();
    await expect.element(section().getByText('19 pixels left out of the fit')).toBeVisible();
    expect(figure('Centre x')).toBe('25.000 ± 0.050 px');
    expect(figure('Correlation of x and y')).toBe('0.00');
    expect(figure('Outline seen')).toBe('100 %');
    expect(figure('Radius')).toBe('5.000 ± 0.030 px');
    expect(figure('Blur, of that expected')).toBe('1.020 ± 0.030');
    expect(figure('Left over, times the noise')).toBe('2.00');
    // The fourth used frame: -1e-5 m over 2e-5 m.
    expect(figure('Off the fitted path')).toBe('−0.5 u');
  });

  it('enlarges the ellipse by a stated factor and draws it that much larger', async () => {
    await measured();
    await expect.element(section().getByText(/^uncertainty u, \d+ times enlarged$/)).toBeVisible();
    const factor = Number(
      /(\d+) times/.exec(host.querySelector('.fit-keys')?.textContent ?? '')?.[1],
    );
    // The picture takes its final width once the page around it is laid out.
    await vi.waitFor(() => {
      const scale = (host.querySelector<HTMLElement>('.pixel-picture')?.offsetWidth ?? 0) / 19;
      const rx = Number(host.querySelector('.fit-overlay .fit-ellipse')?.getAttribute('rx'));
      expect(rx / scale).toBeCloseTo(0.05 * factor, 2);
    });
    expect(factor).toBe(50);
  });

  it('paints nothing left over as middle grey, five standard deviations as black and white', async () => {
    mounted.crew.inspect = async (frame) => {
      const inspection = exampleInspection(frame);
      const residual = new Float32Array(19 * 19);
      residual[0] = -5;
      residual[1] = 7;
      return { ...inspection, residual };
    };
    await measured();
    const canvas = page.getByRole('img', { name: /^What the model leaves over in frame 4/ });
    const levels = () => {
      const element = canvas.element();
      if (!(element instanceof HTMLCanvasElement)) throw new Error('no canvas');
      const { data } = element.getContext('2d')?.getImageData(0, 0, 3, 1) ?? { data: [] };
      return [data[0], data[4], data[8], data[9], data[10]];
    };
    await expect.element(canvas).toBeVisible();
    await expect.poll(levels).toEqual([0, 255, 128, 128, 128]);
    await expect.element(section().getByText('standard deviations of the noise')).toBeVisible();
  });

  it('says why a frame is left out and what to do, also where no model was fitted', async () => {
    mounted.crew.inspect = async (frame) => refused(frame);
    await measured(2);
    await expect
      .element(section().getByRole('heading', { level: 3 }))
      .toHaveTextContent('Frame 2: left out');
    await expect.element(section().getByText(HIDDEN.message)).toBeVisible();
    await expect.element(section().getByText(HIDDEN.remedy)).toBeVisible();
    await expect.element(section().getByText('No model was fitted in this frame')).toBeVisible();
    await expect.element(button('Model')).toBeDisabled();
  });

  it('waits, then says what failed, and tells frames outside the flight', async () => {
    const waiting: ((error: unknown) => void)[] = [];
    mounted.crew.inspect = (frame) =>
      frame !== 4 ? Promise.resolve(null) : new Promise((_, reject) => waiting.push(reject));
    await measured();
    await expect.element(section().getByText('Laying the fit open…')).toBeVisible();
    await vi.waitFor(() => expect(waiting).toHaveLength(1));
    waiting[0]?.(new ExitframeError('noFrame', 'The film has no frame 4.', 'Open it again.'));
    await expect
      .element(section().getByRole('alert'))
      .toHaveTextContent('The film has no frame 4. Open it again.');
    mounted.crew.inspect = async () => null;
    mounted.desk.pick(15);
    await expect
      .element(section().getByRole('heading', { level: 3 }))
      .toHaveTextContent('Frame 15: the ball was not looked for');
  });

  it('goes through the frames left out only, by buttons and keys, with the place among them', async () => {
    await measured(0);
    await page.getByRole('button', { name: 'Look at the 2 left out' }).click();
    await expect.element(section().getByText('1 of 2')).toBeVisible();
    expect(frameNow()).toBe(2);
    await button('Next').click();
    expect(frameNow()).toBe(7);
    await expect.element(section().getByText('2 of 2')).toBeVisible();
    await expect.element(button('Next')).toBeDisabled();
    await userEvent.keyboard('p');
    expect(frameNow()).toBe(2);
    await userEvent.keyboard('n');
    expect(frameNow()).toBe(7);
    await page.getByLabelText('Go through').selectOptions('Used frames, poorest fit first');
    await expect.element(section().getByText('1 of 8')).toBeVisible();
  });

  it('has a mark for every frame and goes to the one clicked, or by arrow keys', async () => {
    await measured(4);
    const strip = page.getByRole('slider', { name: 'Frames around the flight' });
    await expect.element(strip).toHaveAttribute('aria-valuetext', 'frame 4, used');
    expect(host.querySelector('.frame-mark-refused')?.getAttribute('d')?.match(/M/g)).toHaveLength(
      2,
    );
    expect(host.querySelector('.frame-mark-used')?.getAttribute('d')?.match(/M/g)).toHaveLength(8);
    expect(host.querySelector('.frame-mark-outside')?.getAttribute('d')?.match(/M/g)).toHaveLength(
      3,
    );
    // Frames are 11 px apart after 46 px of label.
    await strip.click({ position: { x: 46 + 7.5 * 11, y: 10 } });
    expect(frameNow()).toBe(7);
    await expect.element(strip).toHaveAttribute('aria-valuetext', 'frame 7, refused');
    await userEvent.keyboard('{ArrowLeft}{ArrowLeft}');
    expect(frameNow()).toBe(5);
    await userEvent.keyboard('{End}');
    expect(frameNow()).toBe(12);
  });
});

describe('correcting by hand', () => {
  const handle = () => section().getByRole('slider', { name: /^Ball centre in frame/ });
  const points = () => mounted.session.shots.draft.value?.edits.manualPoints;

  it('nudges the centre by a tenth of a pixel and shows what that did to the result', async () => {
    await measured();
    await button('Correct the centre').click();
    const element = handle().element();
    if (element instanceof HTMLElement) element.focus();
    // Faster than the result follows: no step may be lost.
    await userEvent.keyboard(
      '{ArrowRight}{ArrowRight}{Shift>}{ArrowDown}{/Shift}{Alt>}{ArrowLeft}{/Alt}',
    );
    expect(points()).toEqual([{ frame: 4, x: expect.closeTo(25.19, 9), y: 17, ux: 0.5, uy: 0.5 }]);
    const change = section().getByText(/^Exit velocity/);
    await expect
      .element(change)
      .toHaveTextContent('Exit velocity 40.123 → 40.142 m/s, +0.37 u after: centre in frame 4');
    await expect.element(section().getByText('1 placed by hand')).toBeVisible();
    await button('Undo: centre in frame 4').click();
    expect(points()).toEqual([]);
    await expect.poll(() => figure('Centre x')).toBe('25.000 ± 0.050 px');
  });

  it('puts a centre where the picture is clicked, in a frame that has none', async () => {
    mounted.crew.inspect = async (frame) => refused(frame);
    await measured(7);
    await expect.element(section().getByText('No model was fitted in this frame')).toBeVisible();
    await userEvent.keyboard('c');
    await expect
      .element(handle())
      .toHaveAttribute('aria-label', 'Ball centre in frame 7, not placed yet');
    const picture = host.querySelector<HTMLElement>('.fit-picture .pixel-picture');
    const scale = (picture?.offsetWidth ?? 0) / 19;
    if (picture === null) throw new Error('no picture');
    // The rectangle begins at (31, 7): the middle of its pixel (12, 8) is (43, 15).
    await userEvent.click(picture, { position: { x: 12.5 * scale, y: 8.5 * scale } });
    expect(points()).toEqual([
      { frame: 7, x: expect.closeTo(43, 0.6), y: expect.closeTo(15, 0.6), ux: 0.5, uy: 0.5 },
    ]);
    await expect
      .element(section().getByRole('heading', { level: 3 }))
      .toHaveTextContent('Frame 7: used, placed by hand');
  });

  it('takes the uncertainty of the hand, and gives the measured centre back', async () => {
    await measured();
    await button('Correct the centre').click();
    const element = handle().element();
    if (element instanceof HTMLElement) element.focus();
    await userEvent.keyboard('{ArrowRight}');
    await page.getByLabelText('u of x by hand').fill('0.2');
    await userEvent.keyboard('{Enter}');
    expect(points()?.[0]?.ux).toBe(0.2);
    await page.getByLabelText('u of y by hand').fill('0');
    await expect.element(section().getByRole('alert')).toBeVisible();
    await button('Back to the measured centre').click();
    expect(points()).toEqual([]);
  });

  it('rejects and restores a frame by button and key', async () => {
    await measured();
    await button('Reject this frame').click();
    await expect.element(section().getByText('1 rejected by you')).toBeVisible();
    await expect
      .element(section().getByRole('heading', { level: 3 }))
      .toHaveTextContent('Frame 4: left out');
    await userEvent.keyboard('x');
    await expect.element(section().getByText('8 used', { exact: true })).toBeVisible();
  });
});

describe('where the ball is', () => {
  it('is shown on the film, listed, undone and removed, and asks to measure again', async () => {
    await measured();
    const conclude = mounted.crew.conclude;
    mounted.crew.conclude = async (inputs, isRefit) => {
      if (isRefit && inputs.shot.edits.seeds.length > 0) {
        throw new ExitframeError('pixelsNeeded', 'The film is needed.');
      }
      return conclude(inputs, isRefit);
    };
    await page.getByRole('button', { name: 'Show where the ball is' }).click();
    await userEvent.click(page.getByRole('group', { name: 'Film', exact: true }), {
      position: { x: 300, y: 90 },
    });
    await expect.element(page.getByRole('button', { name: 'Frame 4', exact: true })).toBeVisible();
    expect(mounted.session.shots.draft.value?.edits.seeds).toHaveLength(1);
    expect(host.querySelector('.film-seed .line')).not.toBeNull();
    await expect
      .element(page.getByText('Inputs changed after the result was measured.'))
      .toBeVisible();
    mounted.session.shots.undo();
    expect(mounted.session.shots.draft.value?.edits.seeds).toEqual([]);
    mounted.session.shots.redo();
    await page.getByRole('button', { name: 'Remove the place in frame 4' }).click();
    expect(mounted.session.shots.draft.value?.edits.seeds).toEqual([]);
    await vi.waitFor(() => expect(mounted.session.measuring.freshness.value).toBe('fresh'));
  });

  it('is drawn as a slanted line on the streak image', async () => {
    const line = { origin: [5, 16], axis: [1, 0], from: -5, length: 64, halfWidth: 2 } as const;
    mounted.crew.events = [{ kind: 'streakLine', line, frames: 20 }];
    await measured();
    await page.getByRole('button', { name: 'Show where the ball is' }).click();
    const streak = page.getByRole('slider', { name: 'Streak image: frame' });
    await expect.element(streak).toBeVisible();
    const { width, height } = streak.element().getBoundingClientRect();
    const rowHeight = height / 20;
    await userEvent.dragAndDrop(streak, streak, {
      sourcePosition: { x: width * 0.3, y: rowHeight * 3.5 },
      targetPosition: { x: width * 0.6, y: rowHeight * 9.5 },
    });
    const seeds = mounted.session.shots.draft.value?.edits.seeds ?? [];
    expect(seeds.map((one) => one.frame)).toEqual([3, 9]);
    expect(seeds.every((one) => one.y === 16)).toBe(true);
    const slope = ((seeds[1]?.x ?? 0) - (seeds[0]?.x ?? 0)) / 6;
    await expect.element(page.getByText(/px per frame/)).toHaveTextContent(slope.toFixed(2));
  });
});

describe('accessibility of frame by frame', () => {
  it.each([
    ['light', 'a used frame', 4],
    ['dark', 'a refused frame', 2],
  ] as const)(
    'in %s meets the checkable criteria with %s and the tool in hand',
    async (theme, _, frame) => {
      mounted.preferences.theme.value = theme;
      if (frame === 2) mounted.crew.inspect = async (index) => refused(index);
      await measured(frame);
      await button('Correct the centre').click();
      await expect.element(section().getByRole('slider', { name: /^Ball centre/ })).toBeVisible();
      expect(await findingsIn(host)).toEqual([]);
    },
  );

  it('fits a narrow screen without scrolling sideways', async () => {
    await page.viewport(390, 844);
    await measured();
    await expect.element(section().getByRole('heading', { level: 3 })).toBeVisible();
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
  });
});
