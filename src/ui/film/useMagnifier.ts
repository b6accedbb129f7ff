import { useEffect, useState } from 'preact/hooks';
import type { GreyFrame } from '../../core/frame';
import type { ImagePoint } from '../../core/units';
import { showFixed } from '../../text/show';
import { t } from '../../text/text';
import { insideImage } from './editing';
import type { NudgeSize } from './Handle';
import { greyAt } from './picture';
import { type FilmTransform, type Size, toImage, toViewport } from './view';

/** Keyboard steps, px. */
const STEPS: Readonly<Record<NudgeSize, number>> = { fine: 0.1, normal: 1, coarse: 10 };

/**
 * Where the magnifier stands: under the pointer while that is over the film, else at a handle that fingers and keys
 * move. `start`: where the handle stands before it was moved; null: the middle of what is shown.
 */
export function useMagnifier(
  on: boolean,
  frame: GreyFrame | null,
  start: ImagePoint | null,
  view: FilmTransform,
  viewport: Size,
  image: Size,
) {
  const [moved, setMoved] = useState<ImagePoint | null>(null);
  const [pointed, setPointed] = useState<ImagePoint | null>(null);
  const [grabbed, setGrabbed] = useState<ImagePoint | null>(null);
  useEffect(() => {
    setMoved(null);
    setPointed(null);
  }, [on, image]);
  if (!on || frame === null || viewport.width === 0) return null;
  const middle = toImage(view, viewport.width / 2, viewport.height / 2);
  const stand = insideImage(moved ?? start ?? middle, image);
  const [left, top] = toViewport(view, stand);
  const [x, y] = stand;
  const move = (right: number, down: number, from: ImagePoint) =>
    setMoved(insideImage([from[0] + right, from[1] + down], image));
  return {
    at: pointed ?? stand,
    /** The pointer came over the film, or left it. */
    point: setPointed,
    handle: {
      left,
      top,
      look: 'cross' as const,
      label: t('film.magnifier.label'),
      valueNow: Math.round(x),
      valueText: t('film.magnifier.told', {
        x: showFixed(x, 1),
        y: showFixed(y, 1),
        grey: greyAt(frame, stand) ?? t('film.magnifier.noGrey'),
      }),
      onGrab: () => setGrabbed(stand),
      onDrag(right: number, down: number) {
        setPointed(null);
        if (grabbed !== null) move(right / view.scale, down / view.scale, grabbed);
      },
      onDrop: () => setGrabbed(null),
      onNudge(right: number, down: number, size: NudgeSize) {
        setPointed(null);
        move(right * STEPS[size], down * STEPS[size], stand);
      },
    },
  };
}
