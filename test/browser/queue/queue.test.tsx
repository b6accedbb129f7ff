import axe from 'axe-core';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { page } from 'vitest/browser';
import { setName } from '../../../src/app/edits';
import type { Setup } from '../../../src/app/resultTypes';
import type { Session } from '../../../src/app/session';
import { saveAsSetup, takeSetup } from '../../../src/app/setupWork';
import { ExitframeError } from '../../../src/core/reason';
import { faultOf } from '../../../src/protocol/threadFault';
import type { ReductionInputs } from '../../../src/reduction/types';
import { exampleReduction } from '../../fixtures/reduction';
import { type MountedPage, measuredClip, mountPage, openClip } from '../ui/mountPage';

let mounted: MountedPage;
let session: Session;
beforeEach(async () => {
  mounted = await mountPage();
  ({ session } = mounted);
  mounted.desk.cautionsOpen.value = false;
});
afterEach(() => mounted.unmount());

const hashed = () => vi.waitFor(() => expect(session.films.film.value?.sha256).not.toBeNull());
const section = () => page.getByRole('group', { name: 'Queue of clips' });
const row = (name: string) =>
  page
    .getByRole('region', { name: 'Clips in the queue' })
    .getByRole('listitem')
    .filter({ has: page.getByText(name, { exact: true }) });
const input = (role: string) =>
  page.elementLocator(document.querySelector(`[data-role=${role}]`) as HTMLElement);
const clip = (name: string) => new File(['film'], name);
const statesOf = () => session.queue.clips.value.map(({ state }) => state.kind);

/** Calibrates and measures a clip, and saves what it stands on. */
async function calibrated(): Promise<Setup> {
  await measuredClip(session);
  await hashed();
  await vi.waitFor(() => expect(session.measuring.freshness.value).toBe('fresh'));
  const setup = saveAsSetup(session, 'Bench', 'setup');
  if (!setup.ok) throw new Error(setup.reason.message);
  return setup.value;
}

describe('a setup', () => {
  it('is saved from a calibrated shot by name and taken over by the next, as one edit', async () => {
    await openClip(session);
    await page.getByLabelText('Name of a new setup').fill('Bench');
    const save = page.getByRole('button', { name: 'Save this calibration as a setup' });
    await expect.element(save).toBeDisabled();
    const { stateInputs } = await import('../../fixtures/stateInputs');
    stateInputs(session);
    await save.click();
    await expect.element(page.getByText('This shot follows Bench.')).toBeVisible();

    await session.openFiles([clip('next.mp4')]);
    await hashed();
    expect(session.shots.draft.value?.timing.recordingRate).toBeNull();
    await page.getByRole('button', { name: 'Use it for this shot' }).click();
    const draft = session.shots.draft.value;
    expect(draft?.timing.recordingRate?.value).toBe(12000);
    expect(draft?.muzzle?.point).toEqual([5, 16]);
    expect(draft?.setupId).toBe(session.setups.list.value[0]?.id);
    expect(draft?.name).toBe('next');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(session.shots.draft.value?.setupId).toBeNull();
    await page.getByRole('button', { name: 'Redo' }).click();
    session.shots.edit((now) => ({ ...now, muzzle: { point: [6, 16], u: 0.5, axis: null } }), {
      label: 'muzzle plane',
    });
    await expect.element(page.getByText('were changed since, for this shot alone')).toBeVisible();
  });

  it('is not taken over by frames of another size', async () => {
    const setup = await calibrated();
    const wide = { ...setup, id: 'wide', name: 'Wide', frame: { width: 128, height: 32 } };
    session.setups.add(wide);
    await page.getByLabelText('Known setups').selectOptions('Wide');
    const use = page.getByRole('button', { name: 'Use it for this shot' });
    await expect.element(use).toBeDisabled();
    await expect.element(page.getByText('frames of 128 × 32 px')).toBeVisible();
    expect(takeSetup(session, wide, 'setup')).toMatchObject({ ok: false });
  });

  it('comes from a file, or says why not', async () => {
    const setup = await calibrated();
    session.setups.forget(setup.id);
    await expect.element(page.getByText('not known in this browser')).toBeVisible();
    await input('setup-file').upload(new File(['{"format":"x"}'], 'x.setup.json'));
    await expect.element(page.getByText('x.setup.json: This is not a setup file')).toBeVisible();
    await input('setup-file').upload(new File([JSON.stringify(setup)], 'bench.setup.json'));
    await expect.element(page.getByText('This shot follows Bench.')).toBeVisible();
    expect(session.setups.list.value).toEqual([setup]);
  });

  it('holds films against the scene it was calibrated on', async () => {
    const setup = await calibrated();
    await session.openFiles([clip('next.mp4')]);
    await hashed();
    takeSetup(session, setup, 'setup');
    await session.measure();
    expect(mounted.crew.measured.at(-1)?.setupScene?.shotName).toBe('clip');
  });
});

describe('the queue', () => {
  const openNotebook = () => page.getByRole('button', { name: 'Notebook', exact: true }).click();

  it('says what it needs while no setup is known', async () => {
    await openNotebook();
    await expect.element(section().getByText('No setup is known here yet.')).toBeVisible();
    await input('queue-files').upload([clip('one.mp4')]);
    await expect.element(row('one').getByText('waiting')).toBeVisible();
    await expect.element(section().getByRole('button', { name: 'Measure 1 clip' })).toBeDisabled();
  });

  it('measures clips in one setup into the notebook, each can be opened', async () => {
    const setup = await calibrated();
    session.shots.edit(setName('today'), { label: 'name' });
    await openNotebook();
    await input('queue-files').upload([clip('two.mp4'), clip('one.mp4'), clip('x.shot.json')]);
    await section().getByRole('button', { name: 'Measure 2 clips' }).click();
    await expect.element(section().getByText('2 of 2 clips ended.')).toBeVisible();
    await expect.element(row('one').getByText('done: 40.12 ± 0.10 m/s')).toBeVisible();

    const measured = mounted.crew.measured.slice(-2).map(({ shot }) => shot);
    expect(measured.map(({ name }) => name)).toEqual(['one', 'two']);
    for (const shot of measured) {
      expect(shot.setupId).toBe(setup.id);
      expect(shot.scale).toEqual(setup.scale);
      expect(shot.muzzle).toEqual(setup.muzzle);
    }
    expect(mounted.crew.measured.at(-1)?.setupScene?.shotName).toBe('clip');
    const entries = session.notebook.entries.value;
    expect(entries.map(({ name }) => name)).toEqual(['one', 'two']);
    // The film on the screen stayed.
    expect(session.films.film.value?.info.name).toBe('clip.mp4');
    expect(mounted.crew.benches.map(({ ended }) => ended)).toEqual([true]);

    await row('two').getByRole('button', { name: 'Open two' }).click();
    await vi.waitFor(() => expect(session.films.film.value?.info.name).toBe('two.mp4'));
    expect(session.shots.draft.value?.setupId).toBe(setup.id);
  });

  it('goes on after a clip that fails, says why, and lets it be queued again', async () => {
    await calibrated();
    await openNotebook();
    let isBroken = true;
    const conclude = async (inputs: ReductionInputs) => {
      if (inputs.shot.name === 'bad' && isBroken) {
        throw new ExitframeError('decodeFailed', 'The clip bad.mp4 is cut off.', 'Copy it again.');
      }
      return exampleReduction(inputs);
    };
    mounted.crew.conclude = conclude;
    await input('queue-files').upload([clip('bad.mp4'), clip('good.mp4'), clip('notes.txt')]);
    await section().getByRole('button', { name: 'Measure 2 clips' }).click();
    await expect
      .element(section().getByText('2 of 2 clips ended, 1 of them failed.'))
      .toBeVisible();
    await expect.element(row('bad').getByText('The clip bad.mp4 is cut off.')).toBeVisible();
    expect(statesOf()).toEqual(['failed', 'done']);
    isBroken = false;
    await row('bad').getByRole('button', { name: 'Queue again: bad' }).click();
    await section().getByRole('button', { name: 'Measure 1 clip' }).click();
    await expect.poll(statesOf).toEqual(['done', 'done']);
    expect(session.notebook.entries.value.map(({ name }) => name)).toEqual(['good', 'bad']);
  });

  it('tells of a camera that moved', async () => {
    await calibrated();
    await openNotebook();
    const warning = {
      ...{ code: 'cameraMoved', message: 'The camera has moved by 4 px.' },
      remedy: 'Set scale and muzzle again on this film.',
    };
    mounted.crew.conclude = async (inputs) => {
      const reduction = exampleReduction(inputs);
      return { ...reduction, result: { ...reduction.result, warnings: [warning] } };
    };
    await input('queue-files').upload([clip('one.mp4')]);
    await section().getByRole('button', { name: 'Measure 1 clip' }).click();
    await expect.element(row('one').getByText('The camera has moved by 4 px.')).toBeVisible();
  });

  it('cancels one clip, or all, and measures the others', async () => {
    await calibrated();
    await openNotebook();
    mounted.crew.conclude = (inputs) =>
      inputs.shot.name === 'slow'
        ? new Promise(() => {})
        : Promise.resolve(exampleReduction(inputs));
    await input('queue-files').upload([clip('slow.mp4'), clip('tail.mp4')]);
    await section().getByRole('button', { name: 'Measure 2 clips' }).click();
    await expect.poll(statesOf).toEqual(['measuring', 'waiting']);
    await row('slow').getByRole('button', { name: 'Cancel slow' }).click();
    await expect.poll(statesOf).toEqual(['cancelled', 'done']);
    expect(mounted.crew.cancelled).toBe(1);
    await row('slow').getByRole('button', { name: 'Queue again: slow' }).click();
    await input('queue-files').upload([clip('later.mp4')]);
    await section().getByRole('button', { name: 'Measure 2 clips' }).click();
    await section().getByRole('button', { name: 'Cancel all' }).click();
    await expect.poll(statesOf).toEqual(['cancelled', 'done', 'cancelled']);
    await expect.poll(() => session.queue.running.value).toBe(false);
    await section().getByRole('button', { name: 'Clear those ended' }).click();
    expect(statesOf()).toEqual([]);
  });

  it('starts its threads anew after one of them died', async () => {
    await calibrated();
    await openNotebook();
    mounted.crew.conclude = (inputs) => {
      if (inputs.shot.name !== 'deadly') return Promise.resolve(exampleReduction(inputs));
      mounted.crew.benches.at(-1)?.die(faultOf('out of memory'));
      return new Promise(() => {});
    };
    await input('queue-files').upload([clip('deadly.mp4'), clip('fine.mp4')]);
    await section().getByRole('button', { name: 'Measure 2 clips' }).click();
    await expect.poll(statesOf).toEqual(['failed', 'done']);
    await expect.element(row('deadly').getByText('out of memory')).toBeVisible();
    expect(mounted.crew.benches.map(({ ended }) => ended)).toEqual([true, true]);
  });

  it('refuses clips of another size than the setup', async () => {
    const setup = await calibrated();
    const wide = { ...setup, id: 'wide', name: 'Wide', frame: { width: 128, height: 32 } };
    session.setups.add(wide);
    await openNotebook();
    await section().getByLabelText('Setup of the clips').selectOptions('Wide');
    await input('queue-files').upload([clip('one.mp4')]);
    await section().getByRole('button', { name: 'Measure 1 clip' }).click();
    await expect.element(row('one').getByText('frames of 128 × 32 px')).toBeVisible();
  });

  it('has the states under each other, whatever can be done with a clip', async () => {
    await calibrated();
    await openNotebook();
    mounted.crew.conclude = async (inputs) => {
      if (inputs.shot.name === 'bad') throw new ExitframeError('decodeFailed', 'It is cut off.');
      return exampleReduction(inputs);
    };
    await input('queue-files').upload([clip('bad.mp4'), clip('a long name.mp4')]);
    await section().getByRole('button', { name: 'Measure 2 clips' }).click();
    await expect.poll(() => statesOf().toSorted()).toEqual(['done', 'failed']);
    await input('queue-files').upload([clip('later.mp4')]);
    await expect.poll(statesOf).toContain('waiting');
    const starts = [...document.querySelectorAll('.queue-state')].map(
      (one) => one.getBoundingClientRect().left,
    );
    expect(starts).toHaveLength(3);
    expect(new Set(starts).size).toBe(1);
  });

  it('has no accessibility faults', async () => {
    await calibrated();
    await openNotebook();
    await input('queue-files').upload([clip('one.mp4'), clip('notes.mp4')]);
    await section().getByRole('button', { name: 'Measure 2 clips' }).click();
    await expect.poll(statesOf).toEqual(['done', 'done']);
    const { violations } = await axe.run(document.querySelector('.queue') as HTMLElement);
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
  });
});
