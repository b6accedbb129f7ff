import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { SweepQuestion } from '../../../src/plan/sweep';
import { sweep } from '../../../src/plan/sweep';
import { parseShot } from '../../../src/shot/parse';
import { findingsIn } from '../ui/accessibility';
import { type MountedPage, mountPage, openClip } from '../ui/mountPage';

let mounted: MountedPage;
beforeEach(async () => {
  mounted = await mountPage();
  mounted.desk.cautionsOpen.value = false;
  await page.getByRole('button', { name: 'Plan a shot' }).click();
});
afterEach(() => mounted.unmount());

const outcome = () => page.getByRole('region', { name: 'What to expect' });
const comparison = () => page.getByRole('region', { name: 'Rate against field of view' });

async function type(label: string, text: string) {
  await page.getByLabelText(label, { exact: true }).fill(text);
  await userEvent.keyboard('{Enter}');
}

/** A sweep of few cells in place of the many that the page asks for. */
const smallSweep = (asked: SweepQuestion[] = []) => {
  mounted.crew.planner = {
    ...mounted.crew.planner,
    async sweep(question, onShare) {
      asked.push(question);
      const few = { ...question, rates: [300, 6000, 24_000], fields: [0.2, 0.4] };
      return sweep(few, onShare);
    },
  };
};

describe('the plan of a shot', () => {
  it('needs no footage, and says what to expect with the caution beside it', async () => {
    await expect.element(page.getByText('Predictions are for study only')).toBeVisible();
    await expect.element(outcome().getByText('The exit velocity should come out to')).toBeVisible();
    await expect.element(outcome().getByText('frames past the muzzle')).toBeVisible();
    await expect.element(outcome().getByText('anywhere within a frame')).toBeVisible();
    await expect
      .element(outcome().getByRole('table', { name: 'Light that an exposure takes' }))
      .toBeVisible();
  });

  it('follows what is typed, and says what cannot be and what to do', async () => {
    await type('Exposure', '200 us');
    await expect
      .element(outcome().getByText('Nothing can be expected of this plan.'))
      .toBeVisible();
    await expect.element(outcome().getByText('is longer than a frame')).toBeVisible();
    await expect
      .element(page.getByRole('button', { name: 'Use for the next shot' }))
      .toBeDisabled();
    await type('Exposure', '5 us');
    await expect.element(outcome().getByText('of the light of the one')).toBeVisible();
    await expect.element(outcome().getByText('Use 4.0 times the light of then')).toBeVisible();
  });

  it('takes the speed from a launch model', async () => {
    await page.getByText('Speed from a launch model').click();
    await page.getByLabelText('Model', { exact: true }).selectOptions('constantForce');
    await page.getByRole('button', { name: 'Take the model’s speed' }).click();
    await expect.element(page.getByText('The pressure left in the barrel')).toBeVisible();
    await type('Residual pressure', '10');
    await type('Seal burst pressure', '50');
    await page.getByRole('button', { name: 'Take the model’s speed' }).click();
    await expect.element(page.getByText('which is taken over')).toBeVisible();
    // v = sqrt(2 p A x / m) over 1.4 m less where the ball lies: 330 m/s.
    expect(mounted.session.planning.plan.value.speed.value).toBeGreaterThan(320);
    expect(mounted.session.planning.plan.value.speed.value).toBeLessThan(340);
  });

  it('compares rates and fields of view and plans with the best', async () => {
    const asked: SweepQuestion[] = [];
    smallSweep(asked);
    const before = mounted.session.planning.plan.value;
    await comparison().getByRole('button', { name: 'Compare' }).click();
    await expect.element(comparison().getByText('Least uncertain:')).toBeVisible();
    await expect.element(comparison().getByText('cannot be filmed')).toBeVisible();
    expect(asked[0]?.rates.length).toBeGreaterThan(8);
    await comparison().getByRole('button', { name: 'Plan with these settings' }).click();
    const { view, camera } = mounted.session.planning.plan.value;
    expect([0.2, 0.4]).toContain(view.across);
    expect([6000, 24_000]).toContain(camera.rate.value);
    await expect.element(comparison().getByText('The plan has changed')).toBeVisible();
    await page.getByTitle('Undo: settings with the least uncertainty').click();
    expect(mounted.session.planning.plan.value).toEqual(before);
  });

  it('takes back one change after the other, by the keyboard too', async () => {
    const { planning } = mounted.session;
    const before = planning.plan.value;
    await type('Exposure', '5 us');
    await type('Blur of a still edge', '1.2');
    await userEvent.keyboard('{Control>}z{/Control}');
    expect(planning.plan.value.picture).toEqual(before.picture);
    expect(planning.undoLabel.value).toBe('planned camera');
    await userEvent.keyboard('{Control>}z{/Control}');
    expect(planning.plan.value).toEqual(before);
    await userEvent.keyboard('{Control>}y{/Control}');
    expect(planning.plan.value.camera.exposure.value).toBeCloseTo(5e-6, 12);
    // What else the page can undo stays as it is.
    expect(mounted.session.shots.undoLabel.value).toBeNull();
  });

  it('cancels a comparison', async () => {
    mounted.crew.planner = {
      ...mounted.crew.planner,
      sweep: (_, onShare) => {
        onShare(0.25);
        return new Promise(() => {});
      },
    };
    await comparison().getByRole('button', { name: 'Compare' }).click();
    await expect.element(comparison().getByText('25 %')).toBeVisible();
    await comparison().getByRole('button', { name: 'Cancel' }).click();
    await expect.element(comparison().getByRole('button', { name: 'Compare' })).toBeVisible();
  });

  it('takes a table of modes, and says what it cannot read', async () => {
    await page.getByLabelText('The camera is limited by').selectOptions('modes');
    const modes = page.getByLabelText('Modes, a line each');
    await modes.fill('5000 1024 x 512\nfast');
    await userEvent.tab();
    await expect.element(page.getByText('is not a camera mode')).toBeVisible();
    await modes.fill('5000 1024 x 512\n20000 512 x 128');
    await userEvent.tab();
    await expect.element(page.getByText('is not a camera mode')).not.toBeInTheDocument();
    expect(mounted.session.planning.trade.value).toEqual({
      kind: 'modes',
      modes: [
        { rate: 5000, width: 1024, height: 512 },
        { rate: 20_000, width: 512, height: 128 },
      ],
    });
  });

  it('begins from the shot that is open', async () => {
    await expect
      .element(page.getByRole('button', { name: 'Begin from the shot that is open' }))
      .not.toBeInTheDocument();
    await openClip(mounted.session);
    await page.getByRole('button', { name: 'Begin from the shot that is open' }).click();
    expect(mounted.session.planning.plan.value.camera.width).toBe(64);
    // 64 pixels over the field of view planned before: the ball is too small, and that is said.
    await expect.element(outcome().getByText('Nothing can be expected')).toBeVisible();
  });

  it('has a shot file that the tool reads', async () => {
    await expect.poll(() => mounted.session.planning.judgement.value?.shot.ok).toBe(true);
    const shot = mounted.session.planning.judgement.value?.shot;
    if (!shot?.ok) throw new Error('no shot file');
    expect(parseShot(JSON.stringify(shot.value)).ok).toBe(true);
  });

  it.each(['light', 'dark'] as const)('meets the checkable success criteria, %s', async (theme) => {
    mounted.preferences.theme.value = theme;
    smallSweep();
    await comparison().getByRole('button', { name: 'Compare' }).click();
    await expect.element(comparison().getByText('Least uncertain:')).toBeVisible();
    expect(await findingsIn(mounted.host)).toEqual([]);
  });
});
