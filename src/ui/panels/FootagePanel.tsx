import { setName, setNotes } from '../../app/edits';
import type { OpenFilm } from '../../app/filmStore';
import type { AwaitedFootage } from '../../app/opening';
import { SAMPLES } from '../../app/samples';
import { FEWEST_FRAMES } from '../../app/steps';
import { formatCount, numberAt } from '../../core/format';
import { openSampleSeries } from '../actions';
import { useDesk } from '../desk';
import { TextField } from '../fields/TextField';
import { OfflineWords } from '../shell/NewVersion';
import { WarningBox } from '../shell/Notices';
import { FileButtons } from './FileButtons';
import { Facts, Group, Panel } from './Panel';
import { SetupGroup } from './SetupGroup';

/** Opening film, and what the file says of itself. */
export function FootagePanel() {
  const desk = useDesk();
  const { films, shots, awaited, sample, keeping } = desk.session;
  const film = films.film.value;
  const state = films.state.value;
  const draft = shots.draft.value;
  const waiting = awaited.value;
  return (
    <Panel step="footage" title="Footage">
      <p class="muted">
        Drop a clip, a folder of images or a shot file anywhere on this page. Nothing leaves this
        machine.
      </p>
      <OfflineWords />
      {keeping.problem.value !== null && <WarningBox reason={keeping.problem.value} />}
      {waiting !== null && <Awaited waiting={waiting} />}
      <FileButtons />
      {state.kind === 'opening' && (
        <p role="status">
          Opening {state.name}…
          {state.hashed !== null &&
            ` checking that it is the right file: ${Math.round(state.hashed * 100)} %`}
        </p>
      )}
      {film !== null && film.info.frameCount < FEWEST_FRAMES && (
        <WarningBox
          reason={{
            code: 'tooFewFrames',
            message: `This film has ${film.info.frameCount} frames; a speed needs the ball in ${FEWEST_FRAMES} at least.`,
            remedy: 'Choose a longer clip.',
          }}
        />
      )}
      {film !== null && <FilmFacts film={film} reload={keeping.footage.value} />}
      <SetupGroup />
      {draft !== null && (
        <Group title="Shot">
          <TextField
            label="Name"
            value={draft.name}
            onCommit={(name) => shots.edit(setName(name), { label: 'name' })}
          />
          <TextField
            label="Notes"
            value={draft.notes}
            lines={3}
            onCommit={(notes) => shots.edit(setNotes(notes), { label: 'notes' })}
          />
        </Group>
      )}
      <Group title="Rendered samples">
        <p class="muted">
          Made by this project's renderer, Brinewick Teaching Laboratory, Launcher B: no real shots.
        </p>
        {SAMPLES.length === 0 && <p>No sample clips came with this build.</p>}
        <ul class="samples">
          {SAMPLES.map((one) => (
            <li key={one.id}>
              <button
                type="button"
                aria-pressed={sample.value?.id === one.id}
                onClick={() => void desk.session.openSample(one)}
              >
                {one.shot.name || one.id}
              </button>
              <span class="muted">{one.shot.notes}</span>
            </li>
          ))}
          <li>
            <button type="button" onClick={() => openSampleSeries(desk)}>
              Series of 12 shots
            </button>
            <span class="muted">
              Four barrel lengths, three shots each, in the notebook: speed beside models, launcher
              fitted to the shots.
            </span>
          </li>
        </ul>
      </Group>
    </Panel>
  );
}

/** Footage that has to be chosen, and what for. */
function Awaited({ waiting }: { readonly waiting: AwaitedFootage }) {
  const { awaited, askForAwaited } = useDesk().session;
  const { fileName, path, left } = waiting;
  return (
    <div class="notice notice-missing" data-code="footageAwaited">
      <p>
        {fileName === null ? 'This window was left with a shot, whose inputs are kept. ' : ''}
        {fileName ?? 'It'} needs its footage: {left?.ask ? 'open' : 'choose'}{' '}
        <strong>{path}</strong>
        {left === null ? '.' : ' again.'}
      </p>
      <div class="row">
        {left?.ask && (
          <button type="button" class="primary" onClick={() => void askForAwaited()}>
            Open it again
          </button>
        )}
        <button
          type="button"
          class="plain"
          onClick={() => {
            awaited.value = null;
          }}
        >
          Do not open it
        </button>
      </div>
    </div>
  );
}

const RELOAD_WORDS = {
  sample: 'comes back: it is part of the tool',
  copying: 'is being copied within this browser',
  copy: 'comes back: this browser holds a copy',
  handles: 'comes back once you allow it to be read',
  none: 'has to be chosen again; inputs are kept',
} as const;

function FilmFacts(props: {
  readonly film: OpenFilm;
  /** How it comes back after a reload. */
  readonly reload: keyof typeof RELOAD_WORDS | null;
}) {
  const { film, reload } = props;
  const { info, sha256 } = film;
  const size = film.files.reduce((sum, file) => sum + file.blob.size, 0);
  return (
    <Facts
      facts={[
        ['File', info.name],
        ['Container, codec', `${info.container}, ${info.codec}`],
        ['Size', `${info.width} × ${info.height} px, ${numberAt(size / 2 ** 20, 3)} MiB`],
        ['Frames', formatCount(info.frameCount)],
        [
          'Playback rate in the file',
          info.playbackRate === null ? 'none stated' : `${numberAt(info.playbackRate, 5)} frames/s`,
        ],
        ['Rotation applied', `${info.rotation}°`],
        ['Bit depth', `${info.bitDepth} bit`],
        ['Pixel shape', info.pixelAspect === 1 ? 'square' : `${numberAt(info.pixelAspect, 4)} : 1`],
        ['Sound track', info.hasAudio ? 'yes' : 'none'],
        ['Decoder', `${info.decoder.name}: ${info.decoder.why}`],
        ...(reload === null ? [] : [['After a reload', RELOAD_WORDS[reload]] as const]),
        ['SHA-256', sha256 === null ? 'being worked out…' : <code>{sha256.slice(0, 16)}…</code>],
      ]}
    />
  );
}
