import axe from 'axe-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { type MountedPage, measuredClip, mountPage, openClip } from './mountPage';

const PIXELS = 64 * 32;
const scene = {
  width: 64,
  height: 32,
  level: new Float32Array(PIXELS).fill(100),
  white: 255,
  noise: { readVariance: 1, gain: 0 },
};

let mounted: MountedPage;
beforeEach(async () => {
  mounted = await mountPage();
});
afterEach(() => mounted.unmount());

const show = () => page.getByRole('combobox', { name: 'Show' });
const greyAt = (x: number, y: number) =>
  mounted.host
    .querySelector<HTMLCanvasElement>('.film > canvas')
    ?.getContext('2d')
    ?.getImageData(x, y, 1, 1).data[0];
const noFindings = async () => {
  const { violations } = await axe.run(mounted.host);
  expect(violations.map(({ id }) => id)).toEqual([]);
};

describe('how the film is shown', () => {
  it('as what changed, once the still scene is read', async () => {
    const { session, crew } = mounted;
    let answer: () => void = () => {};
    crew.scenery = {
      ...crew.scenery,
      stillScene: (_, onShare) => {
        onShare(0.5);
        return new Promise((resolve) => {
          answer = () => resolve(scene);
        });
      },
    };
    await openClip(session);
    await expect.poll(() => greyAt(40, 20)).toBe(100);
    await show().selectOptions('change');
    await expect.element(page.getByText('Reading the still scene: 50 %')).toBeVisible();
    answer();
    await expect.poll(() => greyAt(40, 20)).toBe(127);
    // The fake film's frames each have one bright pixel.
    expect(greyAt(0, 0)).toBe(255);
    await noFindings();
  });

  it('says why the still scene cannot be read', async () => {
    const { session, crew } = mounted;
    crew.scenery = {
      ...crew.scenery,
      stillScene: () => Promise.reject(new Error('Too few frames.')),
    };
    await openClip(session);
    await show().selectOptions('change');
    await expect.element(page.getByRole('alert')).toHaveTextContent('Too few frames.');
  });

  it('as the whole flight, of the frames chosen', async () => {
    const { session, crew } = mounted;
    const asked: unknown[] = [];
    crew.scenery = {
      ...crew.scenery,
      stillScene: async () => scene,
      flight: async ({ frames }) => {
        asked.push(frames);
        const data = new Uint8Array(PIXELS).fill(10);
        return { index: -1, width: 64, height: 32, data, white: 255 };
      },
    };
    await measuredClip(session);
    await show().selectOptions('flight');
    await expect.poll(() => greyAt(40, 20)).toBe(10);
    await page.getByRole('combobox', { name: 'Frames' }).selectOptions('all');
    await page.getByRole('checkbox', { name: 'fragments too' }).click();
    await expect.poll(() => asked).toHaveLength(3);
    expect(asked[2]).not.toEqual(asked[0]);
    await noFindings();
    await show().selectOptions('filmed');
    await expect.poll(() => greyAt(40, 20)).toBe(100);
  });

  it('with greys stretched in a window that can be moved and holds for every frame', async () => {
    const { session, desk } = mounted;
    await openClip(session);
    await expect.poll(() => greyAt(40, 20)).toBe(100);
    await page.getByRole('button', { name: 'Stretch greys' }).click();
    const white = page.getByRole('slider', { name: 'White at' });
    await expect.element(white).toBeVisible();
    await white.fill('200');
    await page.getByRole('slider', { name: 'Black at' }).fill('100');
    await expect.poll(() => greyAt(40, 20)).toBe(0);
    await page.getByRole('button', { name: '1 frame on' }).click();
    expect(desk.look.greys.value).toEqual({ low: 100, high: 200 });
  });

  it('on the keyboard, unless single keys are turned off', async () => {
    const { session, desk, preferences } = mounted;
    await openClip(session);
    await expect.poll(() => session.player.shown.value).not.toBeNull();
    await userEvent.keyboard('m');
    expect(desk.look.magnified.value).toBe(true);
    await userEvent.keyboard('h');
    expect(desk.look.held.value?.index).toBe(0);
    await userEvent.keyboard('r');
    expect(session.player.repeats.value).toBe(true);
    await page.getByRole('button', { name: 'Keys' }).click();
    await page.getByRole('checkbox', { name: 'Single letters and digits work as keys' }).click();
    expect(preferences.singleKeys.value).toBe(false);
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await userEvent.keyboard('m');
    expect(desk.look.magnified.value).toBe(true);
  });

  it('anew with another film', async () => {
    const { session, desk } = mounted;
    await openClip(session);
    await expect.poll(() => session.player.shown.value).not.toBeNull();
    desk.look.hold(true);
    desk.look.show('between');
    desk.look.stretch(true);
    await session.openFiles([new File(['other'], 'other.mp4')]);
    expect(desk.look.held.value).toBeNull();
    expect(desk.look.showing.value).toBe('filmed');
    expect(desk.look.greys.value).toBeNull();
  });
});

describe('playing', () => {
  it('takes any slow rate, and says what is wrong with another', async () => {
    const { session } = mounted;
    await openClip(session);
    const rate = page.getByRole('textbox', { name: /^Play at/ });
    await rate.fill('0.25');
    expect(session.player.rate.value).toBe(0.25);
    await rate.fill('500');
    await expect.element(page.getByText(/play rate/i)).toBeVisible();
    expect(session.player.rate.value).toBe(0.25);
    await userEvent.keyboard('{Tab}');
    await expect.element(rate).toHaveValue('0.25');
  });
});

describe('the ribbon', () => {
  it('goes to a frame and names the ball’s passage', async () => {
    const { session } = mounted;
    await measuredClip(session);
    const slider = page.getByRole('slider', { name: 'Frame', exact: true });
    await slider.fill('7');
    await expect.poll(() => session.player.shown.value?.index).toBe(7);
    await expect
      .element(slider)
      .toHaveAttribute(
        'aria-valuetext',
        expect.stringMatching(/^frame 7, ball in frames \d+ to \d+$/),
      );
    expect(mounted.host.querySelector('.ribbon-passage')).not.toBeNull();
  });

  it('shows small pictures and a streak image before anything is measured', async () => {
    const { session, crew } = mounted;
    crew.scenery = {
      ...crew.scenery,
      lookThrough: async ({ info }, onPart) => {
        const line = { origin: [0, 16], axis: [1, 0], from: 0, length: 64, halfWidth: 1 } as const;
        for (let frame = 0; frame < info.frameCount; frame++) {
          const data = new Uint8Array(16 * 8).fill(200);
          onPart({
            line,
            rows: [{ frame, row: new Float32Array(64).fill(frame) }],
            small: [{ index: frame, width: 16, height: 8, data, white: 255 }],
            share: (frame + 1) / info.frameCount,
          });
        }
      },
    };
    await openClip(session);
    await expect.poll(() => session.streak.value.rows.size).toBe(20);
    const painted = () => {
      const canvas = mounted.host.querySelector<HTMLCanvasElement>('.ribbon canvas');
      const middle = [Math.round((canvas?.width ?? 0) / 2), 20] as const;
      return canvas?.getContext('2d')?.getImageData(middle[0] - 20, middle[1], 40, 1).data;
    };
    await expect.poll(() => painted()?.includes(200)).toBe(true);
    await expect
      .element(page.getByRole('slider', { name: 'Streak image: frame' }))
      .toHaveAccessibleDescription(/^Streak image of 20 frames/);
  });
});
