import { setSeeds } from '../../app/edits';
import { alongLine } from '../../app/flightPicture';
import { seedsOfSlant, slantOf } from '../../app/seedLine';
import type { Session } from '../../app/session';
import { showFixed, showNumber } from '../../text/show';
import { t } from '../../text/text';
import { type Desk, useDesk } from '../desk';
import { useWindowHeight } from '../film/useViewport';
import { Icon } from '../shell/Icon';
import type { StreakCentre, StreakInstant } from '../streak/props';
import { StreakView } from '../streak/StreakView';
import { instantsOnFrames, pathOf, positionsOf } from './overlays';

/** Beside the film's share this leaves room for the frame controls under both. */
const HEIGHT_SHARE = 0.3;
/** CSS px. */
const SMALLEST_HEIGHT = 200;
const LARGEST_HEIGHT = 420;

/** The streak image under the film: fills while frames are measured, then carries path, burst and exit. */
export function StreakStage() {
  const desk = useDesk();
  const { session } = desk;
  const { player, shots } = session;
  const { line, rows, version } = session.streak.value;
  const instants = instantsOnFrames(session);
  const draft = shots.draft.value;
  const frameCount = player.frameCount.value;
  const along = line === null ? null : alongLine(line);
  const windowHeight = useWindowHeight();
  const height = Math.min(Math.max(windowHeight * HEIGHT_SHARE, SMALLEST_HEIGHT), LARGEST_HEIGHT);
  const muzzle = draft?.muzzle?.point ?? null;
  const seeds = draft?.edits.seeds ?? [];
  const clock = session.readings.clock.value;
  return (
    <StreakView
      geometry={line}
      frameCount={frameCount}
      streak={{ rows, version }}
      contrast={desk.look.greys.value}
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
      instants={instants}
      lost={draft?.timing.droppedFrames ?? []}
      seed={line === null ? null : slantOf(line, seeds)}
      seeding={desk.mode.value.kind === 'seed'}
      height={height}
      description={describe(session, instants)}
      slopeText={(slope) => slopeText(session, slope)}
      {...(clock?.ok && {
        timeText: (frame: number) => `${showNumber(clock.value.frameTime(frame) * 1000, 6)} ms`,
      })}
      tools={line === null ? null : <PathTool desk={desk} />}
      placeholder={t('stage.streak.placeholder')}
      onSeed={(slant, settled) => {
        if (!settled || line === null) return;
        shots.edit(setSeeds(seedsOfSlant(line, slant, seeds, frameCount)), {
          label: t('edits.path'),
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

/** Takes up, or puts down, the tool that draws the slanted line. */
function PathTool({ desk }: { readonly desk: Desk }) {
  const held = desk.mode.value.kind === 'seed';
  return (
    <button
      type="button"
      class="path-tool"
      aria-pressed={held}
      title={t('stage.streak.drawPathTitle')}
      onClick={() => desk.toggleMode({ kind: 'seed' })}
    >
      <Icon name="slant" /> {t('stage.streak.drawPath')}
    </button>
  );
}

/** In pixels a frame and, where clock and scale are known, as a speed: a first one, before anything is fitted. */
function slopeText(session: Session, pixelsPerFrame: number): string {
  const { clock, scale } = session.readings;
  const slope = showFixed(pixelsPerFrame, 2);
  if (!clock.value?.ok || !scale.value?.ok) return t('streak.slope', { slope });
  const speed =
    (Math.abs(pixelsPerFrame) * scale.value.value.value) / clock.value.value.frameInterval;
  return t('streak.slopeSpeed', { slope, speed: `${showNumber(speed, 3)} m/s` });
}

function describe(session: Session, instants: readonly StreakInstant[]): string {
  const filled = session.streak.value.rows.size;
  if (filled === 0) return t('stage.streak.empty');
  const used = session.measuring.positions.value.filter((one) => one.used).length;
  const marked = instants.map(({ label, frame, low, high }) =>
    t('stage.streak.instant', {
      label,
      frame: showFixed(frame, 2),
      low: showFixed(low, 2),
      high: showFixed(high, 2),
    }),
  );
  return [t('stage.streak.filled', { filled, used }), ...marked].join(' ');
}
