import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { LineTimeReport } from '../../../src/app/resultTypes';
import { type Outcome, success } from '../../../src/core/reason';
import type { LampQuestion } from '../../../src/reduction/calibrateClock';
import { infoOf } from '../../fixtures/crew';
import { type MountedPage, mountPage, openClip } from '../ui/mountPage';

let mounted: MountedPage;
beforeEach(async () => {
  mounted = await mountPage();
  await openClip(mounted.session);
  mounted.desk.step.value = 'clock';
  await page.getByText('Measure it from a lamp').click();
});
afterEach(() => mounted.unmount());

const REPORT: LineTimeReport = {
  direction: 'up',
  lineTime: { value: 10.5e-6, u: 0.1e-6 },
  rolls: true,
  directionAssumed: false,
  contrast: 0.23,
  frequencyCheck: { measured: { value: 100.01, u: 0.02 }, agrees: true },
  frames: 240,
};
const chooser = () => page.getByRole('button', { name: 'Choose the clip of the lamp' });
const readout = () => mounted.session.shots.draft.value?.timing.readout;

async function stateRate() {
  await page.getByLabelText('Recording rate', { exact: true }).fill('1000');
  await userEvent.keyboard('{Enter}');
}

const answering = (report: Outcome<LineTimeReport>, asked: LampQuestion[] = []) => {
  mounted.crew.calibrator = {
    ...mounted.crew.calibrator,
    async lineTime(files, question) {
      asked.push(question);
      return { info: infoOf(files[0]?.name ?? '', 240), report };
    },
  };
};

const choose = () =>
  page
    .elementLocator(document.querySelector('[data-role=lamp]') as HTMLElement)
    .upload(new File(['lamp'], 'lamp.mp4'));

describe('the line time from a lamp', () => {
  it('says that it needs a rate, or goes by the time stamps of the clip', async () => {
    await expect.element(chooser()).toBeDisabled();
    await expect.element(page.getByText('No recording rate is stated above.')).toBeVisible();
    await page.getByLabelText('Time in that clip comes from').selectOptions('containerTimestamps');
    await expect.element(chooser()).toBeEnabled();
  });

  it('asks what was stated, and states what was found, as one step to undo', async () => {
    const asked: LampQuestion[] = [];
    answering(success(REPORT), asked);
    await stateRate();
    await page.getByLabelText('Direction of readout').selectOptions('upwards');
    await choose();
    const words = page.getByText(/^Lines are read upwards/);
    await expect
      .element(words)
      .toHaveTextContent('10.50 ± 0.10 µs each: 0.3360 ± 0.0032 ms for all 32.');
    expect(asked).toEqual([{ mains: { value: 50, u: 0.02 }, rate: 1000, assumed: 'up' }]);
    await page.getByRole('button', { name: 'Use this line time' }).click();
    expect(readout()).toEqual({ direction: 'up', lineTime: REPORT.lineTime });
    await expect.element(page.getByRole('button', { name: 'In use' })).toBeDisabled();
    mounted.session.shots.undo();
    expect(readout()?.lineTime.value).toBe(0);
    expect(mounted.crew.calibrators).toEqual({ started: 1, ended: 1 });
  });

  it('takes a shutter that is not seen to roll for a global one', async () => {
    answering(success({ ...REPORT, rolls: false, lineTime: { value: 1e-8, u: 2e-8 } }));
    await stateRate();
    await choose();
    await expect.element(page.getByText('The shutter is not seen to roll')).toBeVisible();
    await page.getByRole('button', { name: 'Use a global shutter' }).click();
    expect(readout()?.lineTime).toEqual({ value: 0, u: 2e-8 });
  });

  it('warns of a frequency that is not that of the mains, and of another size of picture', async () => {
    const frequencyCheck = { measured: { value: 96, u: 0.1 }, agrees: false };
    answering(success({ ...REPORT, frequencyCheck }));
    const { lineTime } = mounted.crew.calibrator;
    mounted.crew.calibrator.lineTime = async (...given) => {
      const answer = await lineTime(...given);
      return { ...answer, info: { ...answer.info, width: 640 } };
    };
    await stateRate();
    await choose();
    await expect.element(page.getByText('96.00 ± 0.10 /s, which is not twice')).toBeVisible();
    await expect.element(page.getByText('filmed at 640 by 32 pixels')).toBeVisible();
  });

  it('says why a clip tells nothing, and what to do', async () => {
    const reason = { code: 'noFlicker', message: 'No flicker.', remedy: 'Use another lamp.' };
    answering({ ok: false, reason });
    await stateRate();
    await choose();
    await expect
      .element(page.getByRole('alert'))
      .toHaveTextContent('lamp.mp4: No flicker. Use another lamp.');
  });

  it('can be cancelled, keeping what was found before and everything stated', async () => {
    answering(success(REPORT));
    await stateRate();
    await choose();
    await expect.element(page.getByText(/^Lines are read/)).toBeVisible();
    mounted.crew.calibrator.lineTime = (_files, _question, onShare) => {
      onShare(0.4);
      return new Promise<never>(() => undefined);
    };
    await choose();
    await expect.element(page.getByText('Reading the lamp: 40 %')).toBeVisible();
    await expect.element(chooser()).toBeDisabled();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await expect.element(page.getByText(/^Lines are read/)).toBeVisible();
    expect(mounted.crew.calibrators).toEqual({ started: 2, ended: 2 });
    expect(mounted.crew.opened).toEqual(['clip.mp4']);
    expect(mounted.session.shots.draft.value?.timing.recordingRate?.value).toBe(1000);
  });
});
