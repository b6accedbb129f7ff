import { setSeeds } from '../../app/edits';
import { alongLine, instantsOf } from '../../app/flightPicture';
import { frameAtTime } from '../../app/frameAtTime';
import { seedsOfSlant, slantOf } from '../../app/seedLine';
import type { Session } from '../../app/session';
import { useDesk } from '../desk';
import { useWindowHeight } from '../film/useViewport';
import type { StreakCentre, StreakInstant } from '../streak/props';
import { StreakView } from '../streak/StreakView';
import { pathOf, positionsOf } from './overlays';

/** Beside the film's share this leaves room for the frame controls under both. */
const HEIGHT_SHARE = 0.3;
/** CSS px. */
const SMALLEST_HEIGHT = 200;
const LARGEST_HEIGHT = 420;

/** The streak image under the film: fills while frames are measured, then carries path, burst and exit. */
export function StreakStage() {
  const desk = useDesk();
  const { session } = desk;
  const { measuring, player, shots } = session;
  const { line, rows, version } = measuring.streak.value;
  const draft = shots.draft.value;
  const frameCount = player.frameCount.value;
  const along = line === null ? null : alongLine(line);
  const windowHeight = useWindowHeight();
  const height = Math.min(Math.max(windowHeight * HEIGHT_SHARE, SMALLEST_HEIGHT), LARGEST_HEIGHT);
  const muzzle = draft?.muzzle?.point ?? null;
  const seeds = draft?.edits.seeds ?? [];
  return (
    <StreakView
      geometry={line}
      frameCount={frameCount}
      streak={{ rows, version }}
      contrast={desk.contrast.value}
      view={desk.view}
      currentFrame={player.current.value}
      centres={along === null ? [] : centres(session, along)}
      curve={
        along === null
          ? null
          : (pathOf(session)?.map(({ at, frame, halfWidth }) => ({
              frame,
              along: along(at[0], at[1]),
              halfWidth,
            })) ?? null)
      }
      muzzle={along === null || muzzle === null ? null : along(muzzle[0], muzzle[1])}
      instants={instants(session)}
      lost={draft?.timing.droppedFrames ?? []}
      seed={line === null ? null : slantOf(line, seeds)}
      seeding={desk.mode.value.kind === 'seed'}
      height={height}
      description={describe(session)}
      placeholder="The streak image builds up here while the frames are measured: one line of greys a frame, time running down."
      onSeed={(slant, settled) => {
        if (!settled || line === null) return;
        shots.edit(setSeeds(seedsOfSlant(line, slant, seeds, frameCount)), {
          label: 'path drawn on the streak image',
          mergeKey: 'slant',
        });
      }}
      onHover={desk.peek}
      onPick={desk.pick}
    />
  );
}

function centres(session: Session, along: (x: number, y: number) => number): StreakCentre[] {
  return positionsOf(session).flatMap(({ frame, x, y, ux, uy, used, manual }) => {
    if (x === null || y === null) return [];
    return [{ frame, along: along(x, y), u: Math.hypot(ux ?? 0, uy ?? 0), used, manual }];
  });
}

function instants(session: Session): StreakInstant[] {
  const result = session.measuring.reduction.value?.result;
  const clock = session.readings.clock.value;
  const muzzle = session.shots.draft.value?.muzzle?.point;
  if (result === undefined || muzzle === undefined || !clock?.ok) return [];
  const count = session.player.frameCount.value;
  const frameAt = (time: number) => frameAtTime(clock.value, count, time, muzzle[0], muzzle[1]);
  return instantsOf(result).map(({ kind, label, time, low, high }) => ({
    kind,
    label,
    frame: frameAt(time),
    low: frameAt(low),
    high: frameAt(high),
  }));
}

function describe(session: Session): string {
  const { streak, positions } = session.measuring;
  const filled = streak.value.rows.size;
  if (filled === 0) return 'The streak image is empty until the film is measured.';
  const used = positions.value.filter((one) => one.used).length;
  return `Streak image of ${filled} frames, place across and time down, with ${used} ball centres on it.`;
}
