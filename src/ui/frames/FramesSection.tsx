import { useEffect, useRef } from 'preact/hooks';
import { frameStates } from '../../app/frameStates';
import type { Position, Reduction } from '../../app/resultTypes';
import type { ImageRect } from '../../core/units';
import { t } from '../../text/text';
import { placeCentre } from '../actions';
import { useDesk } from '../desk';
import { Later } from '../Later';
import { ReasonText } from '../shell/Notices';
import { filmOverlays } from '../stage/overlays';
import { FitNumbers } from './FitNumbers';
import { FitPicture } from './FitPicture';
import { FrameEdits } from './FrameEdits';
import { FrameRounds } from './FrameRounds';
import { FrameStrip } from './FrameStrip';
import { FrameVerdict } from './FrameVerdict';
import './frames.css';
import { ResidualPicture } from './ResidualPicture';

/** The heading that the side sheet leads to. */
export const FRAMES_ID = 'frame-by-frame';

/** Every frame's fit to look at and correct: where it is, what was fitted, what is left over, what counts. */
export function FramesSection() {
  const desk = useDesk();
  const { session } = desk;
  const step = desk.step.value;
  const reduction = session.measuring.reduction.value;
  const open = session.films.film.value !== null && (step === 'ball' || step === 'result');
  useEffect(() => {
    session.inspectionWanted.value = open;
    return () => {
      session.inspectionWanted.value = false;
    };
  }, [session, open]);
  if (!open || (step === 'result' && reduction === null)) return null;
  const stale = session.measuring.freshness.value === 'measureAgain';
  return (
    <section class={`frames frames-${step} stack`} aria-labelledby={FRAMES_ID}>
      <div class="row frames-head">
        <h2 id={FRAMES_ID} tabIndex={-1}>
          {t('frames.title')}
        </h2>
        {reduction !== null && <FrameRounds result={reduction.result} />}
      </div>
      {reduction === null ? (
        <Unmeasured />
      ) : (
        <div class={`stack ${stale ? 'stale' : ''}`}>
          <Later>
            <Measured reduction={reduction} />
          </Later>
        </div>
      )}
    </section>
  );
}

function Unmeasured() {
  const { measuring } = useDesk().session;
  const running = measuring.status.value.kind === 'running';
  return (
    <>
      <p class="muted">{t(running ? 'frames.beingMeasured' : 'frames.notMeasured')}</p>
      {!running && <FrameEdits />}
    </>
  );
}

function Measured({ reduction }: { readonly reduction: Reduction }) {
  const desk = useDesk();
  const { session } = desk;
  const { player } = session;
  const { result } = reduction;
  const frame = player.current.value;
  const grey = player.shown.value;
  const state = session.inspection.value;
  const inspection =
    state.kind === 'ready' && state.inspection.frame === frame ? state.inspection : null;
  const position = result.positions.find((one) => one.frame === frame) ?? null;
  const overlays = filmOverlays(session);
  const drawn = overlays.positions.find((one) => one.frame === frame) ?? null;
  const radius = inspection?.measurement.ok
    ? inspection.measurement.value.radius.value
    : overlays.ballRadius;
  const rect = useRect(inspection?.rect ?? null, drawn ?? position, radius);
  return (
    <>
      {result.positions.length > 0 && (
        <FrameStrip
          states={frameStates(result.positions, player.frameCount.value)}
          current={frame}
          onPick={desk.pick}
        />
      )}
      <div class="frame-sheet">
        {rect === null ? (
          <p class="pixel-placeholder">
            {t(state.kind === 'loading' ? 'frames.layingOpen' : 'frames.placedHere')}
          </p>
        ) : (
          <>
            {grey !== null && grey.index === frame ? (
              <FitPicture
                frame={grey}
                rect={rect}
                inspection={inspection}
                position={drawn}
                radius={radius}
                movable={desk.mode.value.kind === 'point'}
                onMove={(at) => placeCentre(desk, frame, at)}
              />
            ) : (
              <p class="pixel-placeholder">{t('frames.fetching')}</p>
            )}
            {state.kind === 'failed' ? (
              <div class="pixel-placeholder" role="alert">
                <ReasonText reason={state.reason} />
              </div>
            ) : (
              state.kind !== 'outside' && <ResidualPicture inspection={inspection} />
            )}
          </>
        )}
        <div class="stack frame-told">
          <FrameVerdict
            frame={frame}
            position={position}
            inspection={state}
            anyFound={result.positions.length > 0}
          />
          <FrameEdits />
        </div>
      </div>
      <FitNumbers result={result} position={position} inspection={state} />
    </>
  );
}

/** Around a place, as large as the rectangle before, until the fit brings its own; null: no place is known. */
function useRect(
  fitted: ImageRect | null,
  position: Pick<Position, 'x' | 'y'> | null,
  radius: number | null,
): ImageRect | null {
  const { films } = useDesk().session;
  const last = useRef<ImageRect | null>(null);
  if (fitted !== null) {
    last.current = fitted;
    return fitted;
  }
  const info = films.film.value?.info;
  if (info === undefined || position?.x == null || position.y === null) return null;
  const reach = Math.ceil(1.6 * (radius ?? 20) + 6);
  const [width, height] = [last.current?.[2] ?? 2 * reach + 1, last.current?.[3] ?? 2 * reach + 1];
  const start = (middle: number, size: number, whole: number) =>
    Math.min(Math.max(Math.round(middle - size / 2), 0), Math.max(0, whole - size));
  return [
    start(position.x, width, info.width),
    start(position.y, height, info.height),
    Math.min(width, info.width),
    Math.min(height, info.height),
  ];
}
