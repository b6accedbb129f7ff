import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { BoardAnswer } from '../../../src/app/resultTypes';
import type { GreyFrame } from '../../../src/core/frame';
import type { LensCalibration } from '../../../src/core/lens';
import { failure, success } from '../../../src/core/reason';
import { infoOf } from '../../fixtures/crew';
import { findingsIn } from '../ui/accessibility';
import { type MountedPage, mountPage, openClip } from '../ui/mountPage';

let mounted: MountedPage;
beforeEach(async () => {
  mounted = await mountPage();
  await openClip(mounted.session);
  mounted.desk.step.value = 'scale';
  await page.getByText(/^Lens:/).click();
});
afterEach(() => mounted.unmount());

const FOUND: LensCalibration = {
  k1: { value: -0.29, u: 0.005 },
  k2: { value: 0.1, u: 0.02 },
  correlation: -0.9,
  centre: [31, 16],
  centreU: 1,
  focal: { value: 60, u: 0.5 },
  rms: 0.21,
  parts: [
    { name: 'frame 0', points: 54, rms: 0.2 },
    { name: 'frame 2', points: 48, rms: 0.3 },
  ],
};
const LENS = {
  k1: FOUND.k1,
  k2: FOUND.k2,
  correlation: -0.9,
  centre: [31, 16],
  centreU: 1,
  focal: FOUND.focal,
};

const grey = (index: number): GreyFrame => ({
  index,
  width: 32,
  height: 16,
  data: new Uint8Array(512).fill(120),
  white: 255,
});
const corners = Array.from({ length: 12 }, (_, i) => ({
  column: i % 4,
  row: Math.floor(i / 4),
  at: [10 + 8 * (i % 4), 6 + 8 * Math.floor(i / 4)] as const,
}));

const answer = (part: Partial<BoardAnswer> = {}): BoardAnswer => ({
  info: infoOf('board_0.png', 3),
  lens: success(FOUND),
  boards: [0, 2].map((frame) => ({ frame, columns: 4, rows: 3, corners })),
  refused: [{ frame: 1, reason: { code: 'noBoard', message: 'No board stands out.' } }],
  pictures: [0, 1, 2].map((index) => ({ frame: grey(index), by: 2 })),
  ...part,
});

const button = (name: string | RegExp) => page.getByRole('button', { name });
const stated = () => mounted.session.shots.draft.value?.scale.lens;
const chooseBoards = () =>
  page
    .elementLocator(document.querySelector('[data-role=boards]') as HTMLElement)
    .upload(['b10.png', 'b2.png', 'b1.png'].map((name) => new File(['x'], name)));

describe('the lens from a chessboard', () => {
  beforeEach(() => page.getByText('From pictures of a chessboard').click());

  it('says what was found where, shows the corners, and states the lens as one step to undo', async () => {
    const sizes: unknown[] = [];
    mounted.crew.calibrator.lensFromBoards = async (files, size) => {
      sizes.push([files.map(({ name }) => name), size]);
      return answer();
    };
    await chooseBoards();
    await expect
      .element(page.getByText(/^k1 = /))
      .toHaveTextContent(
        'k1 = −0.2900 ± 0.0050, k2 = 0.100 ± 0.020. The board was found in 2 of 3 pictures; its corners miss the lens by 0.21 px (rms).',
      );
    expect(sizes).toEqual([[['b1.png', 'b2.png', 'b10.png'], null]]);
    await expect.element(page.getByText(/^The correction moves a corner/)).toBeVisible();
    // Names in number order; the first picture with a board comes first.
    await expect
      .element(page.getByRole('img', { name: /^b1.png: 12 corners in 4 by 3, 0.20 px off/ }))
      .toBeVisible();
    expect(document.querySelectorAll('.board circle.line')).toHaveLength(12);
    await expect.element(page.getByText('No board in b2.png.')).toBeVisible();
    await button('Next picture').click();
    await expect.element(page.getByText('2 of 3, b2.png: No board stands out.')).toBeVisible();
    expect(document.querySelectorAll('.board circle')).toHaveLength(0);

    await button('Use this lens').click();
    expect(stated()).toEqual(LENS);
    await expect.element(page.getByText('a chessboard, 2 of 3 pictures')).toBeVisible();
    await expect.element(button('In use')).toBeDisabled();
    mounted.session.shots.undo();
    expect(stated()).toBeNull();
    expect(mounted.crew.opened).toEqual(['clip.mp4']);
  });

  it('passes the size on where both counts are stated, and wants both', async () => {
    let asked: unknown;
    mounted.crew.calibrator.lensFromBoards = async (_files, size) => {
      asked = size;
      return answer();
    };
    await page.getByLabelText('Inner corners across').fill('9');
    await userEvent.keyboard('{Enter}');
    await expect.element(button('Choose the clip or stills')).toBeDisabled();
    await page.getByLabelText('Inner corners down').fill('6');
    await userEvent.keyboard('{Enter}');
    await chooseBoards();
    await expect.element(page.getByText(/^k1 = /)).toBeVisible();
    expect(asked).toEqual({ columns: 9, rows: 6 });
  });

  it('does not offer a lens found on pictures of another size', async () => {
    mounted.crew.calibrator.lensFromBoards = async () =>
      answer({ info: { ...infoOf('b.png', 3), width: 640, height: 480 } });
    await chooseBoards();
    await expect
      .element(page.getByText('The pictures have 640 by 480 pixels, the film 64 by 32'))
      .toBeVisible();
    await expect.element(button('Use this lens')).not.toBeInTheDocument();
  });

  it('says why the pictures tell no lens, and still shows what was found in them', async () => {
    mounted.crew.calibrator.lensFromBoards = async () =>
      answer({ lens: failure('boardsAlike', 'The views are too much alike.', 'Tilt the board.') });
    await chooseBoards();
    await expect
      .element(page.getByRole('alert'))
      .toHaveTextContent('The views are too much alike. Tilt the board.');
    await expect.element(page.getByRole('img', { name: /^b1.png: 12 corners/ })).toBeVisible();
  });

  it('tells of files that cannot be read, and of a thread that stopped', async () => {
    const input = page.elementLocator(document.querySelector('[data-role=boards]') as HTMLElement);
    await input.upload([new File(['{}'], 'a.shot.json'), new File(['{}'], 'b.shot.json')]);
    await expect.element(page.getByRole('alert')).toHaveTextContent('2 shot files were given');
    mounted.crew.calibrator.lensFromBoards = async () => {
      throw new Error('out of memory');
    };
    await chooseBoards();
    await expect.element(page.getByRole('alert')).toHaveTextContent('out of memory');
    expect(mounted.crew.calibrators).toEqual({ started: 1, ended: 1 });
    await expect.element(button('Choose the clip or stills')).toBeEnabled();
  });

  it('can be cancelled', async () => {
    mounted.crew.calibrator.lensFromBoards = (_files, _size, onShare) => {
      onShare(0.25);
      return new Promise<never>(() => undefined);
    };
    await chooseBoards();
    await expect.element(page.getByText('Looking for boards: 25 %')).toBeVisible();
    // It goes on, and is in sight again, after a look at another step.
    mounted.desk.step.value = 'clock';
    await expect.element(page.getByText('Looking for boards: 25 %')).not.toBeInTheDocument();
    mounted.desk.step.value = 'scale';
    await expect.element(page.getByText('Looking for boards: 25 %')).toBeVisible();
    await button('Cancel').click();
    await expect.element(button('Choose the clip or stills')).toBeEnabled();
    expect(mounted.crew.calibrators).toEqual({ started: 1, ended: 1 });
  });
});

describe('the lens from straight edges', () => {
  beforeEach(() => page.getByText('From a straight edge').click());

  it('is found from the edges marked on the frame shown, and outdated by moving one', async () => {
    const asked: unknown[] = [];
    mounted.crew.calibrator.lensFromEdges = async (frame, edges) => {
      asked.push([frame.index, edges]);
      return success({ ...FOUND, parts: [{ name: 'edge 1', points: 40, rms: 0.21 }] });
    };
    await expect.element(button('Find the lens')).toBeDisabled();
    await mounted.session.player.show(3);
    await button('Mark an edge').click();
    const end = page.getByRole('slider', { name: 'Straight edge 1, first end' });
    (end.element() as HTMLElement).focus();
    await userEvent.keyboard('{Shift>}{ArrowUp}{/Shift}{ArrowRight}');
    await button('Find the lens').click();
    await expect.element(page.getByText(/straight to 0.21 px \(rms\)/)).toBeVisible();
    const [[frame, [[from, to]]]] = asked as [[number, [[[number, number], [number, number]]]]];
    expect(frame).toBe(3);
    // 0.1 and 0.9 of 64 px, 0.12 of 32 px, rounded; one up and a tenth to the right.
    expect(from[0]).toBeCloseTo(6.1, 9);
    expect([from[1], ...to]).toEqual([3, 58, 4]);
    await expect.element(page.getByText('State the camera distance above')).toBeVisible();

    await button('Use this lens').click();
    expect(stated()).toEqual(LENS);
    await expect.element(page.getByText('a straight edge', { exact: true })).toBeVisible();
    (end.element() as HTMLElement).focus();
    await userEvent.keyboard('{ArrowDown}');
    await expect.element(page.getByText(/straight to/)).not.toBeInTheDocument();
    expect(stated()).toEqual(LENS);
  });

  it('shows why no lens was found', async () => {
    mounted.crew.calibrator.lensFromEdges = async () =>
      failure('edgeThroughCentre', 'The edge passes the middle.', 'Take another edge.');
    await button('Mark an edge').click();
    await button('Find the lens').click();
    await expect
      .element(page.getByRole('alert'))
      .toHaveTextContent('The edge passes the middle. Take another edge.');
    await button('Remove edge 1').click();
    await expect.element(page.getByRole('alert')).not.toBeInTheDocument();
    expect(mounted.desk.mode.value.kind).toBe('inspect');
  });
});

describe('the lens by its values', () => {
  it('is typed over one without distortion, checked on a grid, and removed', async () => {
    await page.getByText('By typing its values').click();
    await button('Start from a lens without distortion').click();
    await expect.element(page.getByText('by less than a tenth of a pixel')).toBeVisible();
    await page.getByLabelText('k1', { exact: true }).fill('-0.2');
    await userEvent.keyboard('{Enter}');
    expect(stated()).toMatchObject({ k1: { value: -0.2, u: 0 }, focal: { value: 64, u: 32 } });
    await expect.element(page.getByText('values in the shot file or typed')).toBeVisible();
    await page.getByLabelText('Show a grid of the flight plane').click();
    await expect.poll(() => document.querySelector('.film-grid .line')).not.toBeNull();
    mounted.desk.step.value = 'clock';
    await expect.poll(() => document.querySelector('.film-grid .line')).toBeNull();
    mounted.desk.step.value = 'scale';
    await page.getByText(/^Lens:/).click();
    await button('Remove the lens').click();
    expect(stated()).toBeNull();
    mounted.session.shots.undo();
    expect(stated()).toMatchObject({ k1: { value: -0.2, u: 0 } });
  });
});

describe.each(['light', 'dark'] as const)('%s', (theme) => {
  it('meets the checkable success criteria with everything unfolded', async () => {
    mounted.preferences.theme.value = theme;
    mounted.crew.calibrator.lensFromBoards = async () => answer();
    for (const part of ['From pictures of a', 'From a straight edge', 'By typing its values']) {
      await page.getByText(part).click();
    }
    await chooseBoards();
    await button('Use this lens').click();
    await button('Mark an edge').click();
    await page.getByText(/^Plane:/).click();
    await button('Mark a rectangle').click();
    expect(await findingsIn(mounted.host)).toEqual([]);
  });
});
