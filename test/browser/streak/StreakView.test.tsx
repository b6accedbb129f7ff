import { signal } from '@preact/signals';
import axe from 'axe-core';
import { render } from 'preact';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../../src/ui/base.css';
import { toViewport } from '../../../src/ui/film/view';
import type { StreakViewProps } from '../../../src/ui/streak/props';
import { StreakView } from '../../../src/ui/streak/StreakView';
import '../../../src/ui/tokens.css';

const FRAMES = 100;
/** CSS px; four a frame. */
const HEIGHT = 400;
const WIDTH = 800;
const geometry = { origin: [100, 50] as const, axis: [1, 0] as const, from: -100, length: 400 };
const view = signal({ scale: 2, x0: -0.5, y0: -0.5, fitted: true });

const rowOf = (grey: number) => new Float32Array(geometry.length).fill(grey);
const host = document.createElement('div');

function show(given: Partial<StreakViewProps>) {
  render(
    <StreakView
      geometry={geometry}
      frameCount={FRAMES}
      streak={{ rows: new Map(), version: 0 }}
      contrast={{ low: 0, high: 255 }}
      view={view}
      currentFrame={20}
      centres={[]}
      curve={null}
      muzzle={null}
      instants={[]}
      lost={[]}
      seed={null}
      seeding={false}
      height={HEIGHT}
      description="A test streak."
      {...given}
    />,
    host,
  );
}

const surface = () => page.getByRole('slider', { name: 'Streak image: frame' });
const overlayLine = (name: string) => host.querySelector(`.${name} .line`)?.getAttribute('d');
/** Grey at the middle of a frame's line, by the sample's own place; null: clear. */
function painted(frame: number) {
  const canvas = host.querySelector('canvas');
  const ratio = (canvas?.width ?? 0) / WIDTH;
  const [grey, , , alpha] =
    canvas?.getContext('2d')?.getImageData(400 * ratio, (frame * 4 + 2) * ratio, 1, 1).data ?? [];
  return alpha === 0 ? null : grey;
}

beforeEach(async () => {
  await page.viewport(1000, 700);
  host.style.width = `${WIDTH}px`;
  document.body.append(host);
  view.value = { scale: 2, x0: -0.5, y0: -0.5, fitted: true };
});
afterEach(() => {
  render(null, host);
  host.remove();
});

describe('the streak image', () => {
  it('fills line by line as rows come into the same map, in any order', async () => {
    const rows = new Map([[10, rowOf(50)]]);
    show({ streak: { rows, version: 1 } });
    await expect.poll(() => painted(10)).toBe(50);
    expect(painted(11)).toBeNull();
    rows.set(60, rowOf(200));
    rows.set(11, rowOf(90));
    show({ streak: { rows, version: 2 } });
    await expect.poll(() => painted(11)).toBe(90);
    expect(painted(60)).toBe(200);
    expect(painted(10)).toBe(50);
    expect(painted(12)).toBeNull();
  });

  it('paints only what is new', async () => {
    const rows = new Map([[10, rowOf(50)]]);
    show({ streak: { rows, version: 1 } });
    await expect.poll(() => painted(10)).toBe(50);
    const context = host.querySelector('canvas')?.getContext('2d');
    if (!context) throw new Error('no canvas');
    const put = vi.spyOn(context, 'putImageData');
    rows.set(30, rowOf(80));
    show({ streak: { rows, version: 2 } });
    await expect.poll(() => painted(30)).toBe(80);
    expect(put).toHaveBeenCalledTimes(1);
    const [, , , , top, , height] = put.mock.lastCall ?? [];
    const ratio = context.canvas.width / WIDTH;
    expect([top, height]).toEqual([120 * ratio, 4 * ratio]);
  });

  it('follows the film across: the muzzle plane stands at the film’s own place, zoomed too', async () => {
    show({ muzzle: 25 });
    const left = () => Number(/^M([\d.]+) 0V/.exec(overlayLine('film-muzzle') ?? '')?.[1]);
    await expect.poll(left).toBeCloseTo(toViewport(view.value, [125, 50])[0], 6);
    view.value = { scale: 7.5, x0: 110, y0: 20, fitted: false };
    await expect.poll(left).toBeCloseTo(112.5, 6);
  });

  it('lays curve, centres and instants at their frames', async () => {
    show({
      centres: [{ frame: 30, along: 50, u: 0.1, used: true, manual: false }],
      curve: [
        { frame: 20, along: 0, halfWidth: 1 },
        { frame: 40, along: 100, halfWidth: 2 },
      ],
      instants: [{ kind: 'exit', frame: 24.5, low: 24, high: 25, label: 'ball centre leaves' }],
      lost: [{ after: 70, count: 2 }],
    });
    // x = (along + 100 + 0.5) * 2, y = (frame + 0.5) * 4
    await expect.poll(() => overlayLine('film-path')).toBe('M201 82L401 162');
    expect(overlayLine('film-mark-used')).toMatch(/^M298 122a3 3/);
    expect(overlayLine('streak-instant-line')).toBe('M0 100H800');
    const interval = host.querySelector('.streak-instant rect');
    expect(interval?.getAttribute('y')).toBe('98');
    expect(interval?.getAttribute('height')).toBe('4');
    expect(overlayLine('streak-lost')).toBe('M0 284H800');
    await expect.element(page.getByText('ball centre leaves')).toBeVisible();
    await expect.element(page.getByText('2 frames lost')).toBeVisible();
  });

  it('tells the frame under the pointer, and brings a clicked one', async () => {
    const onHover = vi.fn();
    const onPick = vi.fn();
    show({ onHover, onPick });
    await userEvent.hover(surface(), { position: { x: 301, y: 174 } });
    await expect.poll(() => onHover.mock.lastCall).toEqual([43]);
    await expect.element(page.getByText('Frame 43, 50.0 px along the flight axis')).toBeVisible();
    await userEvent.click(surface(), { position: { x: 10, y: 398 } });
    expect(onPick.mock.calls).toEqual([[99]]);
  });

  it('steps through frames on the keyboard and stops at the ends', async () => {
    const onPick = vi.fn();
    show({ onPick });
    const focused = surface().element();
    if (focused instanceof HTMLElement) focused.focus();
    await userEvent.keyboard('{ArrowDown}{ArrowUp}{PageDown}{Home}{End}');
    expect(onPick.mock.calls.flat()).toEqual([21, 19, 30, 0, 99]);
  });

  it('stretches time so that each frame has more room, and shows all again', async () => {
    const rows = new Map(Array.from({ length: FRAMES }, (_, frame) => [frame, rowOf(frame)]));
    const onPick = vi.fn();
    show({ streak: { rows, version: 1 }, onPick });
    await page.getByRole('button', { name: 'Stretch time' }).click();
    await page.getByRole('button', { name: 'Stretch time' }).click();
    // 4 * 1.5 * 1.5 = 9 CSS px a frame about the current one, 20, which stays at 82: the top is at 20 - 82 / 9.
    await userEvent.click(surface(), { position: { x: 10, y: 1 } });
    expect(onPick.mock.lastCall).toEqual([11]);
    await page.getByRole('button', { name: 'All frames' }).click();
    await userEvent.click(surface(), { position: { x: 10, y: 1 } });
    expect(onPick.mock.lastCall).toEqual([0]);
  });

  it('draws the slanted line by dragging and moves its ends by keyboard', async () => {
    const onSeed = vi.fn();
    show({ seeding: true, onSeed });
    await userEvent.dragAndDrop(surface(), surface(), {
      sourcePosition: { x: 101, y: 42 },
      targetPosition: { x: 701, y: 342 },
    });
    const [drawn, settled] = onSeed.mock.lastCall ?? [];
    expect(settled).toBe(true);
    expect(drawn).toEqual({
      from: { frame: 10, along: -50 },
      to: { frame: 85, along: 250 },
    });
    show({ seeding: true, seed: drawn, onSeed });
    // 300 px in 75 frames
    await expect.element(page.getByText('4.00 px per frame')).toBeVisible();
    const later = page.getByRole('slider', { name: 'Slanted line, later end' }).element();
    if (later instanceof HTMLElement) later.focus();
    await userEvent.keyboard('{ArrowRight}{Shift>}{ArrowUp}{/Shift}');
    expect(onSeed.mock.calls.slice(-2).map((call) => call[0].to)).toEqual([
      { frame: 85, along: 251 },
      { frame: 75, along: 250 },
    ]);
  });

  it('says what it is where there is nothing to see', async () => {
    show({
      geometry: null,
      placeholder: 'It fills while frames are measured.',
      instants: [{ kind: 'exit', frame: 50, low: 49, high: 51, label: 'ball centre leaves' }],
    });
    await expect.element(page.getByText('It fills while frames are measured.')).toBeVisible();
    expect(host.textContent).not.toContain('ball centre leaves'); // it would lie over the words
    const description = surface().element().getAttribute('aria-describedby') ?? '';
    expect(document.getElementById(description)?.textContent).toContain('A test streak.');
  });

  it('passes the accessibility rules while a line is being drawn', async () => {
    show({ seeding: true, muzzle: 25 });
    await expect
      .element(page.getByRole('slider', { name: 'Slanted line, later end' }))
      .toBeInTheDocument();
    const { violations } = await axe.run(host, { rules: { region: { enabled: false } } });
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
  });
});
