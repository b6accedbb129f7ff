import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { stateInputs } from '../../fixtures/stateInputs';
import { type MountedPage, mountPage, openClip } from '../ui/mountPage';

let mounted: MountedPage;
beforeEach(async () => {
  mounted = await mountPage();
  await openClip(mounted.session);
  stateInputs(mounted.session);
  mounted.desk.step.value = 'scale';
  await page.getByText(/^Plane:/).click();
  await page.getByRole('button', { name: 'Mark a rectangle on the film' }).click();
});
afterEach(() => mounted.unmount());

const plane = () => mounted.session.shots.draft.value?.scale.plane;
const corner = (name: string) => page.getByRole('slider', { name });
const scaleStep = () =>
  page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name: 'Scale' });

async function typeIn(label: string, text: string) {
  await page.getByLabelText(label, { exact: true }).first().fill(text);
  await userEvent.keyboard('{Enter}');
}

describe('the plane', () => {
  it('asks for its sides, and sets the scale once they are typed', async () => {
    await expect.element(page.getByText('its width or height is not typed yet')).toBeVisible();
    await expect.element(scaleStep()).toHaveTextContent('needs you');
    await typeIn('Width, corner 1 to 2', '16 mm');
    await typeIn('Height, corner 2 to 3', '8 mm');
    // 32 px (16 to 48) are 16 mm, 16 px (8 to 24) are 8 mm.
    await expect.element(scaleStep()).toHaveTextContent('0.500 mm/px');
    await expect.element(page.getByText('the marked plane', { exact: true })).toBeVisible();
    // The known length of the inputs says a third of a millimetre a pixel.
    await expect.element(scaleStep()).toHaveTextContent('needs you');
    await expect
      .element(page.getByText('The known lengths and the marked plane disagree'))
      .toBeVisible();
    expect(plane()).toMatchObject({ width: 0.016, height: 0.008 });
  });

  it('has four corners in a fixed order to nudge by keyboard and drag, each a step to undo', async () => {
    const second = corner('Plane corner 2, top right');
    (second.element() as HTMLElement).focus();
    await userEvent.keyboard('{Shift>}{ArrowRight}{/Shift}{ArrowUp}');
    expect(plane()?.corners[1]).toEqual([49, 7.9]);
    await expect.poll(() => document.querySelector('.magnifier')).not.toBeNull();
    mounted.session.shots.undo();
    expect(plane()?.corners[1]).toEqual([48, 8]);
    const film = page.getByRole('group', { name: 'Film', exact: true });
    await userEvent.dragAndDrop(corner('Plane corner 4, bottom left'), film, {
      targetPosition: { x: 60, y: 200 },
    });
    expect(plane()?.corners[3]).not.toEqual([16, 24]);
    expect(plane()?.corners.slice(0, 3)).toEqual([
      [16, 8],
      [48, 8],
      [48, 24],
    ]);
  });

  it('says where corners make no rectangle that a camera could see', async () => {
    await typeIn('Width, corner 1 to 2', '16 mm');
    await typeIn('Height, corner 2 to 3', '8 mm');
    const crossed = plane();
    if (crossed == null) throw new Error('no plane is marked');
    const [a, b, c, d] = crossed.corners;
    mounted.session.shots.edit(
      (draft) => ({
        ...draft,
        scale: { ...draft.scale, plane: { ...crossed, corners: [a, c, b, d] } },
      }),
      { label: 'corners' },
    );
    await expect.poll(() => document.querySelector('[data-code=planeCorners]')).not.toBeNull();
    await expect.element(page.getByText('These corners tell no view.')).toBeVisible();
    await expect.element(scaleStep()).toHaveTextContent('no scale');
  });

  it('takes its uncertainties and its depth, and can be removed and brought back', async () => {
    await typeIn('± u of each side', '0.1 mm');
    await typeIn('± u of each corner', '0.5');
    // The known length has the same field above.
    await page.getByLabelText('Depth behind the flight').last().fill('-5 mm');
    await userEvent.keyboard('{Enter}');
    expect(plane()).toMatchObject({ u: 1e-4, cornerU: 0.5, depthOffset: -0.005 });
    await page.getByRole('button', { name: 'Remove the plane' }).click();
    expect(plane()).toBeNull();
    expect(mounted.desk.mode.value.kind).toBe('inspect');
    mounted.session.shots.undo();
    expect(plane()).toMatchObject({ cornerU: 0.5 });
  });
});
