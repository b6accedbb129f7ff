import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { Session } from '../../../src/app/session';
import { ExitframeError } from '../../../src/core/reason';
import type { Desk } from '../../../src/ui/desk';
import { type MountedPage, measuredClip, mountPage, openClip } from './mountPage';

let mounted: MountedPage;
let session: Session;
let desk: Desk;

beforeEach(async () => {
  mounted = await mountPage();
  ({ session, desk } = mounted);
});
afterEach(() => mounted.unmount());

const step = (name: string) =>
  page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name });
const button = (name: string | RegExp) => page.getByRole('button', { name });
const open = () => openClip(session);

async function typeIn(label: string, text: string) {
  await page.getByLabelText(label, { exact: true }).first().fill(text);
  await userEvent.keyboard('{Enter}');
}

describe('the page', () => {
  it('says before anything is open what each step waits for, and reaches every step', async () => {
    await expect.element(step('Footage')).toHaveTextContent('needs you');
    for (const name of ['Clock', 'Scale', 'Ball', 'Seal', 'Result']) {
      await step(name).click();
      await expect.element(page.getByRole('heading', { level: 2, name })).toBeVisible();
    }
  });

  it('leads from footage to a result by typing and clicking', async () => {
    await open();
    await expect.element(step('Footage')).toHaveTextContent('20 frames');
    await expect.element(step('Clock')).toHaveTextContent('needs you');

    await step('Clock').click();
    await typeIn('Recording rate', '12000');
    await expect.element(step('Clock')).toHaveTextContent('12 000 /s');
    await expect.element(step('Clock')).toHaveTextContent('done');

    await step('Scale').click();
    await button('Draw a known length').click();
    await typeIn('Distance between the marks', '10.667 mm');
    session.shots.edit((draft) => ({ ...draft, muzzle: { point: [5, 16], u: 0.5, axis: null } }), {
      label: 'muzzle plane',
    });
    await expect.element(step('Scale')).toHaveTextContent('0.3333 mm/px');

    await step('Ball').click();
    await page.getByRole('button', { name: 'Measure', exact: true }).click();
    await expect.element(step('Ball')).toHaveTextContent('10 frames used');

    await step('Result').click();
    await expect.element(page.getByText(/^v = /)).toHaveTextContent('v = 40.12 ± 0.10 m/s (95 %)');
    await expect
      .element(page.getByText(/^The seal opened/))
      .toHaveTextContent("The seal opened 130 ± 48 µs before the ball's centre left.");
    await expect.element(page.getByText('Only ten frames carry the fit.')).toBeVisible();

    await page.getByLabelText('Speed in').selectOptions('km/h');
    await expect
      .element(page.getByText(/^v = /))
      .toHaveTextContent('v = 144.44 ± 0.37 km/h (95 %)');
    await expect.element(step('Result')).toHaveTextContent('km/h');
  });

  it('never prints a number that is none', async () => {
    await open();
    for (const name of ['Footage', 'Clock', 'Scale', 'Ball', 'Seal', 'Result']) {
      await step(name).click();
      expect(document.body.textContent).not.toMatch(/NaN|Infinity|undefined|\[object/);
    }
  });

  it('shows the cautions before a shot’s numbers, once, and again on request', async () => {
    const cautions = page.getByText('nobody stands in line with either end');
    await expect.element(cautions).toBeVisible();
    await button('Close cautions').click();
    await expect.element(cautions).not.toBeInTheDocument();
    await page.getByRole('button', { name: 'Cautions', exact: true }).click();
    await expect.element(cautions).toBeVisible();
  });

  it('undoes and redoes by keyboard', async () => {
    await open();
    await step('Clock').click();
    await typeIn('Recording rate', '12000');
    (document.activeElement as HTMLElement | null)?.blur();
    await userEvent.keyboard('{Control>}z{/Control}');
    expect(session.shots.draft.value?.timing.recordingRate).toBeNull();
    await userEvent.keyboard('{Control>}y{/Control}');
    expect(session.shots.draft.value?.timing.recordingRate?.value).toBe(12000);
  });

  it('leads on to the step that waits, and to the result once measured', async () => {
    await open();
    await button('Next: Clock').click();
    await expect.element(page.getByRole('heading', { level: 2, name: 'Clock' })).toBeVisible();
    // The step itself says what it lacks.
    await expect.element(button(/^Next/)).not.toBeInTheDocument();
    await typeIn('Recording rate', '12000');
    await expect.element(button('Next: Scale')).toBeVisible();
    await measuredClip(session);
    await button('Next: Result').click();
    await expect.element(page.getByText(/^v = /)).toBeVisible();
  });

  it('tells centres better than stated from centres that miss the curve', async () => {
    await measuredClip(session);
    await step('Result').click();
    const scatter = (chiSquare: number) => {
      const now = session.measuring.reduction.value;
      if (now === null || !('model' in now.result.fit)) throw new Error('nothing was measured');
      const checks = [{ code: 'chiSquare', passed: false, message: 'The scatter.', remedy: null }];
      const fit = { ...now.result.fit, chiSquare, dof: 8, checks };
      session.measuring.reduction.value = { ...now, result: { ...now.result, fit } };
    };
    scatter(1);
    await expect.element(page.getByText('on the safe side: The scatter.')).toBeVisible();
    scatter(60);
    await expect.element(page.getByText('look at this: The scatter.')).toBeVisible();
  });

  it('steps through frames by keyboard and takes digits for steps', async () => {
    await open();
    // A click first: keys reach the page only once it has the browser's focus.
    await step('Footage').click();
    (document.activeElement as HTMLElement | null)?.blur();
    await userEvent.keyboard('{ArrowRight}{ArrowRight}{ArrowLeft}');
    expect(session.player.current.value).toBe(1);
    await userEvent.keyboard('{Shift>}{ArrowRight}{/Shift}');
    expect(session.player.current.value).toBe(11);
    await userEvent.keyboard('{End}');
    expect(session.player.current.value).toBe(19);
    await userEvent.keyboard('{Home}');
    expect(session.player.current.value).toBe(0);
    await userEvent.keyboard('3');
    expect(desk.step.value).toBe('scale');
  });

  it('leaves keys to the field that is typed in', async () => {
    await open();
    await step('Clock').click();
    await page.getByLabelText('Recording rate', { exact: true }).click();
    await userEvent.keyboard('12{Home}');
    expect(desk.step.value).toBe('clock');
    expect(session.player.current.value).toBe(0);
  });

  it('lets the film take its own arrow keys, once', async () => {
    await open();
    await expect.element(step('Footage')).toHaveTextContent('20 frames');
    mounted.host.querySelector<HTMLElement>('.film')?.focus();
    await userEvent.keyboard('{ArrowRight}');
    expect(session.player.current.value).toBe(1);
  });

  it('shows the frame under the pointer on the streak image, and the one before it after that', async () => {
    await open();
    await session.player.show(4);
    desk.peek(9);
    expect(session.player.current.value).toBe(9);
    desk.peek(null);
    expect(session.player.current.value).toBe(4);
    desk.peek(9);
    desk.pick(9);
    desk.peek(null);
    expect(session.player.current.value).toBe(9);
  });

  it('marks a result whose inputs changed, and rejects a frame from the table', async () => {
    await measuredClip(session);
    await step('Result').click();
    await page.getByText('Centres of 10 frames, 10 used').click();
    await page.getByRole('button', { name: 'Reject' }).nth(3).click();
    await expect.element(step('Ball')).toHaveTextContent('9 frames used');
    mounted.crew.conclude = async () => {
      throw new ExitframeError('pixelsNeeded', 'The film is needed.');
    };
    await step('Ball').click();
    await typeIn('Diameter', '31 mm');
    await expect.element(step('Result')).toHaveTextContent('needs you');
    await expect.element(page.getByText('Inputs changed: measure again.')).toBeVisible();
    await expect.element(page.getByText('Inputs changed after the result')).toBeVisible();
  });

  it('shows a refused file where footage is opened, with what to do', async () => {
    await open();
    await session.openFiles([new File(['x'], 'notes.txt')]);
    const alert = page.getByRole('alert');
    await expect.element(alert).toHaveTextContent('notes.txt is not a film. Choose a clip.');
    await expect.element(step('Footage')).toHaveTextContent('needs you');
    await button('Dismiss').click();
    await expect.element(step('Footage')).toHaveTextContent('done');
  });

  it('brings what went wrong into sight where the sheet lies below the film', async () => {
    await page.viewport(390, 700);
    await open();
    await session.openFiles([new File(['x'], 'notes.txt')]);
    await expect.element(page.getByRole('alert')).toBeInViewport({ ratio: 1 });
  });

  it('folds the sheet away and brings it back with a step', async () => {
    await button('Fold away').click();
    await expect
      .element(page.getByRole('heading', { level: 2, name: 'Footage' }))
      .not.toBeInTheDocument();
    await step('Clock').click();
    await expect.element(page.getByRole('heading', { level: 2, name: 'Clock' })).toBeVisible();
  });

  it('fits a narrow screen without scrolling sideways', async () => {
    await page.viewport(390, 844);
    await open();
    for (const name of ['Footage', 'Clock', 'Scale', 'Ball', 'Seal', 'Result']) {
      await step(name).click();
      expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
    }
  });
});
