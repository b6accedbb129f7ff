import { signal } from '@preact/signals';
import { render } from 'preact';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../../src/ui/base.css';
import type { StreakSeed, StreakViewProps } from '../../../src/ui/streak/props';
import { StreakView } from '../../../src/ui/streak/StreakView';
import '../../../src/ui/tokens.css';

const host = document.createElement('div');
const rows = new Map(
  Array.from({ length: 100 }, (_, i) => [i, new Float32Array(400).fill(i)] as const),
);

function show(given: Partial<StreakViewProps>) {
  render(
    <StreakView
      geometry={{ origin: [0, 50], axis: [1, 0], from: 0, length: 400 }}
      frameCount={100}
      streak={{ rows, version: 100 }}
      contrast={null}
      view={signal({ scale: 2, x0: -0.5, y0: 0, fitted: true })}
      currentFrame={10}
      centres={[]}
      curve={null}
      muzzle={null}
      instants={[]}
      lost={[]}
      seed={null}
      seeding
      height={400}
      description="A test streak."
      slopeText={(slope) =>
        `${slope.toFixed(2)} px per frame, about ${(10 * slope).toFixed(0)} m/s`
      }
      {...given}
    />,
    host,
  );
}

const area = () => host.querySelector('.streak-surface') as HTMLElement;
const touch = (type: string, pointerId: number, left: number, top: number) => {
  const box = area().getBoundingClientRect();
  area().dispatchEvent(
    new PointerEvent(type, {
      pointerId,
      pointerType: 'touch',
      isPrimary: pointerId === 1,
      button: type === 'pointermove' ? -1 : 0,
      clientX: box.left + left,
      clientY: box.top + top,
      bubbles: true,
    }),
  );
};

beforeEach(async () => {
  await page.viewport(1000, 700);
  host.style.width = '800px';
  document.body.append(host);
  // Made-up pointers cannot be captured.
  vi.spyOn(Element.prototype, 'setPointerCapture').mockImplementation(() => {});
});
afterEach(() => {
  render(null, host);
  host.remove();
  vi.restoreAllMocks();
});

describe('the slanted line', () => {
  const seed: StreakSeed = { from: { frame: 20, along: 50 }, to: { frame: 60, along: 250 } };

  it('is moved as a whole by its middle, and tells the speed', async () => {
    const onSeed = vi.fn();
    show({ seed, onSeed });
    const whole = page.getByRole('slider', { name: 'Slanted line, as a whole' });
    await expect
      .element(whole)
      .toHaveAttribute(
        'aria-valuetext',
        'frame 40.0, 150.0 pixels along; 5.00 px per frame, about 50 m/s',
      );
    const element = whole.element();
    if (element instanceof HTMLElement) element.focus();
    await userEvent.keyboard('{ArrowRight}{Shift>}{ArrowDown}{/Shift}');
    expect(onSeed.mock.calls).toEqual([
      [{ from: { frame: 20, along: 51 }, to: { frame: 60, along: 251 } }, true],
      [{ from: { frame: 30, along: 50 }, to: { frame: 70, along: 250 } }, true],
    ]);
  });

  it('starts on the fitted path', async () => {
    show({
      curve: [
        { frame: 30, along: 10, halfWidth: 1 },
        { frame: 50, along: 210, halfWidth: 1 },
      ],
    });
    await expect
      .element(page.getByRole('slider', { name: 'Slanted line, earlier end' }))
      .toHaveAttribute('aria-valuetext', expect.stringMatching(/^frame 30\.0, 10\.0 pixels along/));
  });

  it('shows while it is drawn, and a second finger takes it back', async () => {
    const onSeed = vi.fn();
    show({ seed, onSeed });
    const earlier = page.getByRole('slider', { name: 'Slanted line, earlier end' });
    await expect.element(earlier).toBeInTheDocument();
    touch('pointerdown', 1, 200, 40);
    touch('pointermove', 1, 400, 200);
    await expect
      .element(earlier)
      .toHaveAttribute('aria-valuetext', expect.stringMatching(/^frame 9\.5/));
    touch('pointerdown', 2, 500, 200);
    await expect
      .element(earlier)
      .toHaveAttribute('aria-valuetext', expect.stringMatching(/^frame 20\.0/));
    touch('pointerup', 2, 500, 200);
    touch('pointerup', 1, 400, 200);
    expect(onSeed.mock.calls.every(([, settled]) => settled === false)).toBe(true);
  });
});

describe('two fingers', () => {
  it('stretch time about the place between them', async () => {
    show({ seeding: false });
    const all = page.getByRole('button', { name: 'All frames' });
    await expect.element(all).toBeDisabled();
    touch('pointerdown', 1, 400, 190);
    touch('pointerdown', 2, 400, 210);
    touch('pointermove', 2, 400, 250);
    await expect.element(all).toBeEnabled();
    const labels = () =>
      [...host.querySelectorAll('.streak-overlay .film-label')].map((one) => one.textContent);
    // Three times as high: a third of the frames is left, about frame 50.
    await expect.poll(() => labels().filter((text) => text === '50')).toHaveLength(1);
    expect(labels()).not.toContain('0');
    expect(labels()).not.toContain('90');
    touch('pointerup', 1, 400, 190);
    touch('pointerup', 2, 400, 250);
  });
});
