import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import type { Quantity } from '../../../src/core/estimate';
import type { Result } from '../../../src/shot/result';
import { exampleReduction } from '../../fixtures/reduction';
import { type MountedPage, measuredClip, mountPage } from './mountPage';

let mounted: MountedPage;
beforeEach(async () => {
  mounted = await mountPage();
});
afterEach(() => mounted.unmount());

const quantity = (value: number, u: number): Quantity => ({
  value,
  u,
  interval: [value - 2 * u, value + 2 * u],
  coverage: 0.95,
  dof: 20,
});

async function resultWith(change: Partial<Result>) {
  mounted.crew.conclude = async (inputs) => {
    const reduction = exampleReduction(inputs);
    return { ...reduction, result: { ...reduction.result, ...change } };
  };
  await measuredClip(mounted.session);
  mounted.desk.step.value = 'result';
}

const told = (role: string) =>
  mounted.host.querySelector(`[data-role=${role}]`)?.textContent?.replaceAll('\u00a0', ' ');

describe('what else the film tells', () => {
  it('is the speed from the blur alone and whether it agrees, in the unit chosen', async () => {
    await resultWith({});
    await expect
      .poll(() => told('streak-speed'))
      .toBe(
        'The blur alone gives 40.4 ± 1.2 m/s (95 %, 8 frames). It agrees with the fit: 0.3 ± 1.2 m/s faster over the same frames.',
      );
    // 1.2 m/s are 4.3 km/h.
    mounted.preferences.speedUnit.value = 'km/h';
    await expect.poll(() => told('streak-speed')).toContain('145.4 ± 4.3 km/h');
  });

  it('says where the two speeds do not agree, and why there is none', async () => {
    await resultWith({
      streak: { speed: quantity(50, 1), minusFit: quantity(10, 1), agrees: false, frames: 1 },
      shake: null,
    });
    await expect.poll(() => told('streak-speed')).toContain('(95 %, 1 frame). It does not agree');
    expect(told('streak-speed')).toContain('Check the exposure');
    expect(told('shake')).toContain('too little detail');
    // The fixture's ball carries no mark.
    expect(told('spin')).toBe('The ball carries no visible mark.');
  });

  it('is the rotation in radians and turns, with its sense', async () => {
    // 62.83 rad/s are ten turns a second.
    await resultWith({
      spin: quantity(-20 * Math.PI, 0.5),
      shake: { rms: 0.02, most: 0.05, u: 0.01 },
    });
    await expect
      .poll(() => told('spin'))
      .toBe('62.8 ± 1.0 rad/s (95 %): 10.00 ± 0.16 turns a second, anticlockwise as seen.');
    expect(told('shake')).toBe(
      'The scene moved by 0.020 px (root mean square), at most 0.050 px, each known to 0.010 px; it was taken off the positions.',
    );
  });

  it('leads to the frame in which the ball broke, and names what was not the ball', async () => {
    await resultWith({
      breakUp: { frame: 7, reason: { code: 'ballBroke', message: 'It is whole up to frame 6.' } },
      rivals: [{ frames: 60, reason: { code: 'standsStill', message: 'It hardly moves.' } }],
      shake: { rms: 0.004, most: 0.008, u: 0.01 },
    });
    await expect.element(page.getByText('Seen in 60 frames: It hardly moves.')).toBeVisible();
    expect(told('shake')).toBe('The scene stood still within 0.020 px.');
    await page.getByRole('button', { name: 'From frame 7 on the ball is no longer whole' }).click();
    expect(mounted.session.player.current.value).toBe(7);
  });

  it('holds the chosen unit in the budget too, inputs that are speeds included', async () => {
    await resultWith({});
    mounted.preferences.speedUnit.value = 'km/h';
    await expect
      .element(page.getByRole('columnheader', { name: 'Contribution, km/h' }).first())
      .toBeInTheDocument();
    const rows = [...mounted.host.querySelectorAll('table tbody tr')].map((row) =>
      [...row.children].map((cell) => cell.textContent?.trim()),
    );
    // 0.04 m/s, sensitivity 1, are 0.144 km/h; 40 m/s a unit are 144 km/h a unit.
    expect(rows).toContainEqual(['fit', 'A', '0.14 km/h', '1.00', '0.14', '94.1 %', '8.00']);
    expect(rows).toContainEqual(['known length', 'B', '0.00025', '144', '0.036', '5.9 %', '∞']);
  });
});
