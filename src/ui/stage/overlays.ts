import { withEdits } from '../../app/drawnPositions';
import { fittedPath, instantsOf } from '../../app/flightPicture';
import { frameAtTime } from '../../app/frameAtTime';
import type { Session } from '../../app/session';
import { fieldText } from '../../text/numbers';
import { language, t } from '../../text/text';
import type { Desk } from '../desk';
import type { FilmMuzzle, FilmOverlays } from '../film/props';
import type { StreakInstant } from '../streak/props';

/** What is drawn on the film, from the inputs and, where there is one, the result. */
export function filmOverlays(session: Session): FilmOverlays {
  const draft = session.shots.draft.value;
  const reduction = session.measuring.reduction.value;
  const scale = session.readings.scale.value;
  const metresPerPixel = reduction?.result.scale.value ?? (scale?.ok ? scale.value.value : null);
  return {
    lengths: (draft?.scale.lengths ?? []).map((one) => ({
      from: one.from,
      to: one.to,
      label:
        one.length === null
          ? t('stage.lengthOpen')
          : fieldText(one.length, 'length', 'mm', language.value),
    })),
    edges: [],
    plane: null,
    grid: null,
    muzzle: muzzleMark(session),
    flightRegion: draft?.region.flight ?? null,
    sealRegion: draft?.seals?.muzzle?.region ?? null,
    positions: positionsOf(session),
    seeds: (draft?.edits.seeds ?? []).map(({ frame, x, y }) => ({ frame, at: [x, y] })),
    path: pathOf(session)?.map((one) => one.at) ?? null,
    ballRadius:
      draft === null || metresPerPixel === null
        ? null
        : draft.ball.diameter.value / 2 / metresPerPixel,
  };
}

/** What lens and plane are told by; only in the step that states them, not to clutter the others. */
export function calibrationMarks({ step, gridShown, session }: Desk) {
  if (step.value !== 'scale') return {};
  const { plane = null, lens = null } = session.shots.draft.value?.scale ?? {};
  const gridded = gridShown.value && (plane !== null || lens !== null);
  return {
    edges: session.calibration.edges.marked.value,
    plane,
    grid: gridded ? (session.readings.grid.value?.lines ?? null) : null,
  };
}

/** Centres as they stand with every edit in them, also where the result has yet to catch up. */
export const positionsOf = (session: Session) =>
  withEdits(session.measuring.positions.value, session.shots.draft.value?.edits);

function muzzleMark(session: Session): FilmMuzzle | null {
  const muzzle = session.shots.draft.value?.muzzle ?? null;
  if (muzzle === null) return null;
  const fitted = session.measuring.reduction.value?.result.axis ?? null;
  return {
    point: muzzle.point,
    axis: muzzle.axis ?? fitted,
    axisFitted: muzzle.axis === null && fitted !== null,
  };
}

/** The fitted path of the result that is shown; null where there is none. */
export function pathOf(session: Session) {
  const reduction = session.measuring.reduction.value;
  const muzzle = session.shots.draft.value?.muzzle ?? null;
  const clock = session.readings.clock.value;
  if (reduction === null || muzzle === null || !clock?.ok) return null;
  return fittedPath(reduction, muzzle.point, clock.value, session.player.frameCount.value);
}

/** The moments the result states, with their intervals, in frames. */
export function instantsOnFrames(session: Session): StreakInstant[] {
  const result = session.measuring.reduction.value?.result;
  const clock = session.readings.clock.value;
  const muzzle = session.shots.draft.value?.muzzle?.point;
  if (result === undefined || muzzle === undefined || !clock?.ok) return [];
  const count = session.player.frameCount.value;
  const frameAt = (time: number) => frameAtTime(clock.value, count, time, muzzle[0], muzzle[1]);
  return instantsOf(result).map(({ kind, time, low, high }) => ({
    kind,
    label: t(`stage.instant.${kind}`),
    frame: frameAt(time),
    low: frameAt(low),
    high: frameAt(high),
  }));
}
