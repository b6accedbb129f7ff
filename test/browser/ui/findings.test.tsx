import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import type { Quantity } from '../../../src/core/estimate';
import type { Result } from '../../../src/shot/result';
import { exampleReduction } from '../../fixtures/reduction';
import { exampleShot } from '../../fixtures/shot';
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

  it('is direction, energy and drag, each with its uncertainty or why there is none', async () => {
    await resultWith({});
    // 0.002 rad are 0.115 degrees, 2 u of 0.0005 rad 0.057 degrees.
    await expect
      .poll(() => told('elevation'))
      .toBe("0.115 ± 0.057° (95 %): upwards from the picture's rows");
    expect(told('kinetic-energy')).toBe('1.530 ± 0.020 J (95 %)');
    expect(told('momentum')).toBe('0.07620 ± 0.00080 kg m/s (95 %)');
    expect(told('bore-acceleration')).toBe('The bore is not in view.');
    expect(told('deceleration')).toBe('310 ± 120 m/s² (95 %)');
    expect(told('drag-coefficient')).toBe('0.45 ± 0.18 (95 %)');
    // Neither a target nor sound is stated.
    expect(told('target-speed')).toBeUndefined();
    expect(told('sound')).toBeUndefined();
  });

  it('says once why there is no speed, not again for all that hangs on it', async () => {
    const none = { unavailable: { code: 'noBall', message: 'No ball was found.' } };
    const { flight } = exampleReduction({ shot: exampleShot(), footageSha256: null }).result;
    const missing = Object.fromEntries(
      Object.keys(flight).map((key) => [key, key === 'target' ? null : none]),
    );
    await resultWith({
      ...{ exitVelocity: none, lead: none, streak: none },
      flight: { ...flight, ...missing },
      shake: null,
    });
    await expect.poll(() => told('shake')).toContain('too little detail');
    expect(told('flight')).toBeUndefined();
    expect(told('streak-speed')).toBeUndefined();
    expect(told('spin')).toBe('The ball carries no visible mark.');
    const sheet = mounted.host.querySelector('.statement')?.textContent ?? '';
    expect(sheet.match(/No ball was found/g)).toHaveLength(1);
  });

  it('is the target and the sound where they are stated', async () => {
    const none = { unavailable: { code: 'noneAfter', message: 'It is not seen past the target.' } };
    await resultWith({
      flight: {
        ...exampleReduction({ shot: exampleShot(), footageSha256: null }).result.flight,
        target: {
          time: quantity(0.0103, 1e-5),
          speedBefore: quantity(38.5, 0.1),
          speedAfter: none,
          energyGivenUp: none,
        },
      },
      sound: {
        burst: quantity(1.6e-4, 2e-5),
        minusFilm: quantity(-2e-4, 3e-5),
        agrees: false,
        impact: { unavailable: { code: 'noImpact', message: 'No impact is heard.' } },
        meanSpeed: quantity(39.1, 0.2),
      },
    });
    await expect.poll(() => told('target-speed')).toBe('38.50 ± 0.20 m/s (95 %)');
    expect(told('target-time')).toBe('10.300 ± 0.020 ms (95 %)');
    expect(told('target-energy')).toBe('It is not seen past the target.');
    expect(told('burst-heard')).toContain(
      'It does not agree with the film: heard 200 ± 60 µs before the burst seen on the film (95 %).',
    );
    expect(told('impact-heard')).toBe('No impact is heard.');
    expect(told('mean-speed')).toBe('39.10 ± 0.40 m/s (95 %)');
  });

  it('has remedies with failed checks, support of models, down-weighted centres and advice', async () => {
    const { fit } = exampleReduction({ shot: exampleShot(), footageSha256: null }).result;
    if (!('model' in fit)) throw new Error('the example has a fit');
    const [first, second] = fit.compared;
    if (first === undefined || second === undefined) throw new Error('it compares two models');
    await resultWith({
      fit: {
        ...fit,
        downWeighted: 2,
        compared: [
          first,
          second,
          { ...second, model: 'uniform', evidenceRatio: 1.02 },
          { ...second, model: 'quadraticDrag', evidenceRatio: null },
        ],
        checks: [
          { code: 'trend', passed: false, message: 'A trend is left.', remedy: 'Check the lens.' },
        ],
      },
    });
    await expect
      .element(page.getByText('look at this: A trend is left. Check the lens.'))
      .toBeVisible();
    expect(told('down-weighted')).toContain('2 centres lie so far off');
    const support = [
      ...mounted.host.querySelectorAll('[aria-label="Models compared"] td.words'),
    ].map((one) => one.textContent);
    expect(support).toEqual(['best', '4.1 times less supported', 'supported as well', 'ruled out']);
    await expect
      .element(page.getByText(/known exactly, the uncertainty would be 76\s% smaller/))
      .toBeVisible();
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
    expect(rows).toContainEqual([
      'fit',
      'A',
      'Student t',
      '0.14 km/h',
      '1.00',
      '0.14',
      '94.1 %',
      '8.00',
    ]);
    expect(rows).toContainEqual([
      'known length',
      'B',
      'normal',
      '2.5 × 10⁻⁴',
      '144',
      '0.036',
      '5.9 %',
      '∞',
    ]);
  });
});
