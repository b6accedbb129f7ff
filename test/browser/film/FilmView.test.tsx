import { signal } from '@preact/signals';
import axe from 'axe-core';
import { render } from 'preact';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type Locator, page, userEvent } from 'vitest/browser';
import type { GreyFrame } from '../../../src/core/frame';
import '../../../src/ui/base.css';
import { FilmView } from '../../../src/ui/film/FilmView';
import type { FilmOverlays, FilmViewProps } from '../../../src/ui/film/props';
import { FIT } from '../../../src/ui/film/view';
import '../../../src/ui/tokens.css';

const WIDTH = 500;
const HEIGHT = 250;
/** The film is shown at two CSS pixels a pixel. */
const SCALE = 2;

/** Grey rises with x, so that a place can be told from its grey. */
const frame: GreyFrame = {
  index: 7,
  width: WIDTH,
  height: HEIGHT,
  data: Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => Math.floor((i % WIDTH) / 2)),
  white: 255,
};

const overlays: FilmOverlays = {
  lengths: [{ from: [100, 200], to: [300, 200], label: '200.00 mm' }],
  muzzle: { point: [60, 100], axis: [1, 0], axisFitted: false },
  flightRegion: [50, 40, 400, 120],
  sealRegion: null,
  seeds: [],
  edges: [],
  plane: null,
  grid: null,
  positions: [7, 8, 9].map((index) => ({
    frame: index,
    x: 100 + 40 * (index - 7),
    y: 100,
    ux: 0.1,
    uy: 0.2,
    cov: 0,
    used: index !== 9,
    manual: false,
  })),
  path: null,
  ballRadius: 15,
};

const host = document.createElement('div');
let view = signal(FIT);

function show(given: Partial<FilmViewProps>) {
  render(
    <FilmView
      frame={frame}
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
const slider = (name: string) => page.getByRole('slider', { name });
async function focus(target: Locator) {
  await expect.element(target).toBeInTheDocument();
  const element = target.element();
  if (element instanceof HTMLElement) element.focus();
  expect(document.activeElement).toBe(element);
}
/** Pixel of the shown canvas, red channel. */
const shownGrey = (x: number, y: number) =>
  host.querySelector('canvas')?.getContext('2d')?.getImageData(x, y, 1, 1).data[0];

beforeEach(async () => {
  await page.viewport(1100, 900);
  host.style.width = `${WIDTH * SCALE}px`;
  document.body.append(host);
  view = signal(FIT);
});
afterEach(() => {
  render(null, host);
  host.remove();
});

describe('the film', () => {
  it('is laid out to fill the width, also before a frame has come', async () => {
    show({ frame: null, placeholder: 'Nothing yet.' });
    await expect.poll(() => view.value.scale).toBe(SCALE);
    await expect.element(page.getByText('Nothing yet.')).toBeVisible();
    expect(film().element().getBoundingClientRect().height).toBe(HEIGHT * SCALE);
  });

  it('follows its container while fitted', async () => {
    show({});
    await expect.poll(() => view.value.scale).toBe(SCALE);
    host.style.width = `${WIDTH}px`;
    await expect.poll(() => view.value.scale).toBe(1);
  });

  it('is fitted anew where the window changed while it was away, a chosen view is kept', async () => {
    show({});
    await expect.poll(() => view.value.scale).toBe(SCALE);
    render(null, host);
    host.style.width = '600px';
    show({});
    await expect.poll(() => view.value.scale).toBe(600 / WIDTH);
    view.value = { ...view.value, scale: 3, fitted: false };
    render(null, host);
    show({});
    await expect.poll(() => host.querySelector('canvas')).not.toBeNull();
    expect(view.value.scale).toBe(3);
  });

  it('paints the greys, stretched where asked', async () => {
    show({});
    await expect.poll(() => shownGrey(200, 10)).toBe(100);
    show({ contrast: { low: 100, high: 200 } });
    await expect.poll(() => shownGrey(200, 10)).toBe(0);
    expect(shownGrey(400, 10)).toBe(255);
  });

  it('zooms about the pointer and tells the shared transform', async () => {
    show({});
    await expect.poll(() => view.value.scale).toBe(SCALE);
    const area = film().element();
    const box = area.getBoundingClientRect();
    const wheel = new WheelEvent('wheel', {
      deltaY: -500,
      clientX: box.left + 400,
      clientY: box.top + 100,
      cancelable: true,
      bubbles: true,
    });
    area.dispatchEvent(wheel);
    expect(wheel.defaultPrevented).toBe(true);
    expect(view.value.scale).toBeCloseTo(SCALE * Math.E, 6);
    // Image x 199.5 stood at 400 CSS px and still does.
    expect((199.5 - view.value.x0) * view.value.scale).toBeCloseTo(400, 6);
    await page.getByRole('button', { name: 'Whole frame' }).click();
    expect(view.value.scale).toBe(SCALE);
  });

  it('steps, zooms and pans on the keyboard', async () => {
    const onStep = vi.fn();
    show({ onStep });
    await expect.poll(() => view.value.scale).toBe(SCALE);
    await focus(film());
    await userEvent.keyboard('{ArrowRight}{ArrowLeft}{PageDown}');
    expect(onStep.mock.calls).toEqual([[1], [-1], [10]]);
    await userEvent.keyboard('+');
    expect(view.value.scale).toBeCloseTo(SCALE * 1.4, 9);
    const { x0 } = view.value;
    await userEvent.keyboard('{Shift>}{ArrowLeft}{/Shift}');
    expect(view.value.x0).toBeCloseTo(x0 - 60 / view.value.scale, 9);
    expect(onStep).toHaveBeenCalledTimes(3);
    await userEvent.keyboard('0');
    expect(view.value.fitted).toBe(true);
  });

  it('tells the pixel under the pointer and its grey', async () => {
    const onPixel = vi.fn();
    show({ onPixel });
    await userEvent.hover(film(), { position: { x: 401, y: 31 } });
    await expect
      .poll(() => onPixel.mock.lastCall)
      .toEqual([{ x: 200, y: 15, grey: 100, change: null }]);
  });

  it('picks the frame of a centre that is clicked', async () => {
    const onPickFrame = vi.fn();
    show({ onPickFrame });
    await userEvent.click(film(), { position: { x: 2 * 140.5 + 3, y: 2 * 100.5 } });
    expect(onPickFrame.mock.calls).toEqual([[8]]);
    await userEvent.click(film(), { position: { x: 600, y: 60 } });
    expect(onPickFrame).toHaveBeenCalledTimes(1);
  });

  it('draws the current centre with its ellipse enlarged as stated', async () => {
    show({});
    await expect.poll(() => view.value.scale).toBe(SCALE);
    const ellipse = host.querySelector('.film-overlay ellipse');
    // ux = 0.1, uy = 0.2 px, 40 times enlarged, two CSS pixels a pixel.
    expect(Number(ellipse?.getAttribute('rx'))).toBeCloseTo(16, 9);
    expect(Number(ellipse?.getAttribute('ry'))).toBeCloseTo(8, 9);
    expect(ellipse?.getAttribute('transform')).toContain('translate(201 201) rotate(90)');
    await expect.element(page.getByText('uncertainty u, 40 times enlarged')).toBeVisible();
  });
});

describe('handles', () => {
  it('move an end of a length by the pointer, and report settled once', async () => {
    const onLengthChange = vi.fn();
    show({ mode: { kind: 'length', index: 0 }, onLengthChange });
    await userEvent.dragAndDrop(slider('Known length 1, first end'), film(), {
      sourcePosition: { x: 18, y: 18 },
      targetPosition: { x: 241, y: 381 },
    });
    const settled = onLengthChange.mock.calls.filter((call) => call[3] === true);
    expect(settled).toHaveLength(1);
    const [index, from, to] = settled[0] ?? [];
    expect(index).toBe(0);
    // It is taken hold of in its middle, so it ends where the pointer does: (241 / 2 - 0.5, 381 / 2 - 0.5).
    expect(from[0]).toBeCloseTo(120, 1);
    expect(from[1]).toBeCloseTo(190, 1);
    expect(to).toEqual([300, 200]);
  });

  it('move by tenths of a pixel on the keyboard, a pixel with Shift, a hundredth with Alt', async () => {
    const onLengthChange = vi.fn();
    show({ mode: { kind: 'length', index: 0 }, onLengthChange });
    await focus(slider('Known length 1, second end'));
    await userEvent.keyboard('{ArrowRight}');
    await userEvent.keyboard('{Shift>}{ArrowUp}{/Shift}');
    await userEvent.keyboard('{Alt>}{ArrowDown}{/Alt}');
    const ends = onLengthChange.mock.calls.map((call) => [...call[2], call[3]]);
    expect(ends).toEqual([
      [300.1, 200, true],
      [300, 199, true],
      [300, 200.01, true],
    ]);
  });

  it('open the magnifier with the exact place and its grey', async () => {
    show({ mode: { kind: 'length', index: 0 } });
    await focus(slider('Known length 1, second end'));
    await expect
      .poll(() => host.querySelector('.magnifier output')?.textContent)
      .toContain('x 300.00y 200.00grey 150');
    await userEvent.keyboard('{Escape}');
    await expect.poll(() => host.querySelector('.magnifier')).toBeNull();
  });

  it('are brought into sight when the keyboard reaches one a zoomed view does not show', async () => {
    view = signal({ scale: 20, x0: 400, y0: 0, fitted: false });
    show({ mode: { kind: 'length', index: 0 } });
    await focus(slider('Known length 1, first end'));
    await expect.poll(() => (100 - view.value.x0) * view.value.scale).toBeCloseTo(500, 6);
  });

  it('turn the direction of travel', async () => {
    const onMuzzleChange = vi.fn();
    show({ mode: { kind: 'muzzle' }, onMuzzleChange });
    // The tip stands 90 CSS pixels from the point; 45 pixels down and 45 to the right is 45 degrees.
    await userEvent.dragAndDrop(slider('Direction of travel'), film(), {
      sourcePosition: { x: 18, y: 18 },
      targetPosition: { x: 2 * 60.5 + 90, y: 2 * 100.5 + 90 },
    });
    const [point, axis, settled] = onMuzzleChange.mock.lastCall ?? [];
    expect(settled).toBe(true);
    expect(point).toEqual([60, 100]);
    expect(axis[0]).toBeCloseTo(Math.SQRT1_2, 3);
    expect(axis[1]).toBeCloseTo(Math.SQRT1_2, 3);
  });
});

describe('for every reader', () => {
  it('the film and its handles pass the accessibility rules', async () => {
    show({ mode: { kind: 'length', index: 0 } });
    await focus(slider('Known length 1, second end'));
    const { violations } = await axe.run(host, { rules: { region: { enabled: false } } });
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
  });
});

describe('drawing', () => {
  const drag = (from: { x: number; y: number }, to: { x: number; y: number }) =>
    userEvent.dragAndDrop(film(), film(), { sourcePosition: from, targetPosition: to });

  it('makes a length from press to release', async () => {
    const onLengthChange = vi.fn();
    show({ mode: { kind: 'length', index: 1 }, onLengthChange });
    await drag({ x: 101, y: 51 }, { x: 301, y: 61 });
    expect(onLengthChange.mock.lastCall).toEqual([1, [50, 25], [150, 30], true]);
  });

  it('leaves a length alone when the film is only clicked', async () => {
    const onLengthChange = vi.fn();
    show({ mode: { kind: 'length', index: 1 }, onLengthChange });
    await userEvent.click(film(), { position: { x: 700, y: 100 } });
    expect(onLengthChange).not.toHaveBeenCalled();
  });

  it('makes a region of whole pixels', async () => {
    const onRegionChange = vi.fn();
    show({ mode: { kind: 'region', which: 'seal' }, onRegionChange });
    await drag({ x: 200, y: 40 }, { x: 260, y: 100 });
    expect(onRegionChange.mock.lastCall).toEqual(['seal', [100, 20, 30, 30], true]);
  });

  it('places the ball in the frame shown', async () => {
    const onPointChange = vi.fn();
    show({ mode: { kind: 'point' }, currentFrame: 42, onPointChange });
    await userEvent.click(film(), { position: { x: 601, y: 151 } });
    expect(onPointChange.mock.lastCall).toEqual([42, [300, 75], true]);
  });

  it('pans with Shift instead', async () => {
    const onLengthChange = vi.fn();
    view = signal({ scale: 4, x0: 100, y0: 40, fitted: false });
    show({ mode: { kind: 'length', index: 1 }, onLengthChange });
    await userEvent.keyboard('{Shift>}');
    await drag({ x: 500, y: 60 }, { x: 540, y: 60 });
    await userEvent.keyboard('{/Shift}');
    expect(view.value.x0).toBeCloseTo(90, 6);
    expect(onLengthChange).not.toHaveBeenCalled();
  });
});
