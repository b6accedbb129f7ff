import { signal } from '@preact/signals';
import axe from 'axe-core';
import { render } from 'preact';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { GreyFrame } from '../../../src/core/frame';
import '../../../src/ui/base.css';
import { FilmView } from '../../../src/ui/film/FilmView';
import type { FilmOverlays, FilmViewProps } from '../../../src/ui/film/props';
import { FIT } from '../../../src/ui/film/view';
import '../../../src/ui/tokens.css';

const WIDTH = 500;
const HEIGHT = 250;

const frame = (index: number, shift: number): GreyFrame => ({
  index,
  width: WIDTH,
  height: HEIGHT,
  data: Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => Math.floor((i % WIDTH) / 4) + shift),
  white: 255,
});
const now = frame(7, 20);
const before = frame(3, 0);

const overlays: FilmOverlays = {
  lengths: [],
  muzzle: null,
  flightRegion: null,
  sealRegion: null,
  seeds: [],
  edges: [],
  plane: null,
  grid: null,
  positions: [
    { frame: 7, x: 300, y: 120, ux: 0.1, uy: 0.1, cov: 0, used: true, manual: false },
    { frame: 3, x: 200, y: 120, ux: 0.1, uy: 0.1, cov: 0, used: true, manual: false },
  ],
  path: null,
  ballRadius: 15,
};

const host = document.createElement('div');
let view = signal(FIT);

function show(given: Partial<FilmViewProps>) {
  render(
    <FilmView
      frame={now}
      imageWidth={WIDTH}
      imageHeight={HEIGHT}
      currentFrame={7}
      contrast={null}
      view={view}
      largestHeightShare={1}
      overlays={overlays}
      ellipseFactor={40}
      mode={{ kind: 'inspect' }}
      description="A test film."
      {...given}
    />,
    host,
  );
}

const film = () => page.getByRole('group', { name: 'Film', exact: true });
const shownGrey = (x: number, y: number) =>
  host.querySelector('canvas')?.getContext('2d')?.getImageData(x, y, 1, 1).data[0];
const focusFilm = () => {
  const element = film().element();
  if (element instanceof HTMLElement) element.focus();
};
const hoverAt = (x: number, y: number) => {
  const area = film().element();
  const box = area.getBoundingClientRect();
  const { scale, x0, y0 } = view.value;
  area.dispatchEvent(
    new PointerEvent('pointermove', {
      clientX: box.left + (x - x0) * scale,
      clientY: box.top + (y - y0) * scale,
      bubbles: true,
    }),
  );
};
const noFindings = async () => {
  const { violations } = await axe.run(host);
  expect(violations.map(({ id }) => id)).toEqual([]);
};

beforeEach(async () => {
  await page.viewport(1100, 900);
  host.style.width = `${2 * WIDTH}px`;
  document.body.append(host);
  view = signal(FIT);
});
afterEach(() => {
  render(null, host);
  host.remove();
});

describe('what changed', () => {
  it('is grey where nothing did, and tells the change of the pixel pointed at', async () => {
    const onPixel = vi.fn();
    show({ against: now.data, changeReach: 100, onPixel });
    await expect.poll(() => shownGrey(200, 10)).toBe(127);
    show({ against: before.data, changeReach: 40, onPixel });
    // 20 of 40 brighter: half way from mid grey to white.
    await expect.poll(() => shownGrey(200, 10)).toBe(191);
    hoverAt(200, 10);
    expect(onPixel).toHaveBeenLastCalledWith({ x: 200, y: 10, grey: 70, change: 20 });
    show({ onPixel });
    hoverAt(200, 10);
    expect(onPixel).toHaveBeenLastCalledWith({ x: 200, y: 10, grey: 70, change: null });
  });
});

describe('pixels', () => {
  it('carry their grey values once there is room, about the ball', async () => {
    show({});
    await expect.poll(() => view.value.scale).toBe(2);
    expect(host.querySelector('.pixel-numbers')).toBeNull();
    focusFilm();
    await userEvent.keyboard('.');
    await expect.poll(() => host.querySelector('.pixel-numbers')).not.toBeNull();
    const { scale, x0 } = view.value;
    expect(x0 + 500 / scale).toBeCloseTo(300, 6);
    const numbers = host.querySelector<HTMLCanvasElement>('.pixel-numbers');
    const drawn = numbers?.getContext('2d')?.getImageData(0, 0, numbers.width, numbers.height).data;
    expect(drawn?.some((value) => value > 0)).toBe(true);
    await userEvent.keyboard('0');
    await expect.poll(() => host.querySelector('.pixel-numbers')).toBeNull();
  });
});

describe('the magnifier', () => {
  it('follows the pointer, and its handle the keyboard', async () => {
    show({ magnified: true });
    const handle = page.getByRole('slider', { name: 'Magnifier' });
    await expect.element(handle).toHaveAttribute('aria-valuetext', 'x 300.0, y 120.0: grey 95');
    const element = handle.element();
    if (element instanceof HTMLElement) element.focus();
    await userEvent.keyboard('{Shift>}{ArrowRight}{/Shift}{ArrowDown}');
    await expect.element(handle).toHaveAttribute('aria-valuetext', 'x 310.0, y 121.0: grey 97');
    const inset = () => host.querySelector('.magnifier output')?.textContent;
    await expect.poll(inset).toContain('x 310.00');
    hoverAt(100, 50);
    await expect.poll(inset).toContain('x 100.00');
    await expect.poll(inset).toContain('grey 45');
    film().element().dispatchEvent(new PointerEvent('pointerleave'));
    await expect.poll(inset).toContain('x 310.00');
    await noFindings();
    show({ magnified: false });
    await expect.poll(inset).toBeUndefined();
  });

  it('stays away while something is drawn', async () => {
    show({ magnified: true, mode: { kind: 'seed' } });
    await expect.poll(() => view.value.scale).toBe(2);
    expect(page.getByRole('slider', { name: 'Magnifier' }).elements()).toHaveLength(0);
  });
});

describe('two fingers on the film', () => {
  it('enlarge it about the place between them and move it along', async () => {
    vi.spyOn(Element.prototype, 'setPointerCapture').mockImplementation(() => {});
    show({});
    await expect.poll(() => view.value.scale).toBe(2);
    const touch = (type: string, pointerId: number, left: number, top: number) => {
      const box = film().element().getBoundingClientRect();
      film()
        .element()
        .dispatchEvent(
          new PointerEvent(type, {
            pointerId,
            pointerType: 'touch',
            button: type === 'pointermove' ? -1 : 0,
            clientX: box.left + left,
            clientY: box.top + top,
            bubbles: true,
          }),
        );
    };
    touch('pointerdown', 1, 400, 200);
    touch('pointerdown', 2, 500, 200);
    touch('pointermove', 2, 700, 200);
    expect(view.value.scale).toBeCloseTo(6, 6);
    // Image x 224.5 stood between the fingers, at 450, and is taken along to 550.
    expect((224.5 - view.value.x0) * view.value.scale).toBeCloseTo(550, 6);
    touch('pointerup', 1, 400, 200);
    touch('pointerup', 2, 700, 200);
    vi.restoreAllMocks();
  });
});

describe('two frames', () => {
  it('are moved and enlarged together and can change places', async () => {
    const onSwap = vi.fn();
    show({ held: before, onSwap });
    const second = page.getByRole('region', { name: 'Frame 3, held beside the film' });
    await expect.element(second).toBeVisible();
    const canvas = () => second.element().querySelector('canvas');
    const greyOf = () => canvas()?.getContext('2d')?.getImageData(200, 10, 1, 1).data[0];
    await expect.poll(greyOf).toBe(50);
    expect(shownGrey(200, 10)).toBe(70);
    const box = second.element().getBoundingClientRect();
    second.element().dispatchEvent(
      new WheelEvent('wheel', {
        deltaY: -500,
        clientX: box.left + 400,
        clientY: box.top + 100,
        cancelable: true,
        bubbles: true,
      }),
    );
    await expect.poll(() => view.value.scale).toBeGreaterThan(5);
    await expect
      .poll(() => canvas()?.style.transform)
      .toBe(host.querySelector('canvas')?.style.transform);
    await page.getByRole('button', { name: 'Swap' }).click();
    expect(onSwap).toHaveBeenCalledOnce();
    await noFindings();
  });

  it('stand beside one another where the film is not drawn out', async () => {
    show({ held: before, imageWidth: 500, imageHeight: 400 });
    await expect.poll(() => host.querySelector('.film-pair-beside')).not.toBeNull();
    const [first, second] = host.querySelectorAll('.film');
    expect(first?.getBoundingClientRect().top).toBe(second?.getBoundingClientRect().top);
  });
});
