import { setName, setNotes } from '../../app/edits';
import type { NamedFootage, OpenFilm } from '../../app/filmStore';
import { sizeOf } from '../../app/footageFiles';
import type { AwaitedFootage } from '../../app/opening';
import { SAMPLES, type Sample } from '../../app/samples';
import { FEWEST_FRAMES } from '../../app/steps';
import { english } from '../../text/en';
import { codecWords, containerWords, isIn } from '../../text/names';
import { reasonWords } from '../../text/reasonWords';
import { showCount, showNumberAt } from '../../text/show';
import { t, tRich } from '../../text/text';
import { openSampleSeries } from '../actions';
import { useDesk } from '../desk';
import { TextField } from '../fields/TextField';
import { FieldsChoice, FieldsWarning, fieldFacts } from '../reading/FieldsChoice';
import { RawDialog } from '../reading/RawDialog';
import { OfflineWords } from '../shell/NewVersion';
import { WarningBox } from '../shell/Notices';
import { Facts } from './Facts';
import { FileButtons } from './FileButtons';
import { FoundWords } from './FoundWords';
import { Group, Panel } from './Panel';
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
    <Panel step="footage" title={t('panels.footage.title')}>
      <p class="muted">{t('panels.footage.drop')}</p>
      <OfflineWords />
      {keeping.problem.value !== null && <WarningBox reason={keeping.problem.value} />}
      {waiting !== null && <Awaited waiting={waiting} />}
      <FileButtons />
      <RawDialog />
      {state.kind === 'opening' && (
        <p role="status">
          {state.hashed === null
            ? t('panels.footage.opening', { name: namedWords(state.footage) })
            : t('panels.footage.checking', {
                name: namedWords(state.footage),
                percent: String(Math.round(state.hashed * 100)),
              })}
        </p>
      )}
      {film !== null && film.info.frameCount < FEWEST_FRAMES && (
        <WarningBox
          reason={{
            code: 'tooFewFrames',
            message: t('panels.footage.tooFew', {
              frames: showCount(film.info.frameCount),
              fewest: showCount(FEWEST_FRAMES),
            }),
            remedy: t('panels.footage.chooseLonger'),
          }}
        />
      )}
      {film !== null && draft !== null && waiting === null && (
        <FoundWords film={film} draft={draft} />
      )}
      {film !== null && <FieldsWarning info={film.info} />}
      {film !== null && <FilmFacts film={film} reload={keeping.footage.value} />}
      {film !== null && <FieldsChoice film={film} />}
      <SetupGroup />
      {draft !== null && (
        <Group title={t('panels.footage.shot')}>
          <TextField
            label={t('panels.footage.name')}
            value={draft.name}
            onCommit={(name) => shots.edit(setName(name), { label: t('edits.name') })}
          />
          <TextField
            label={t('panels.footage.notes')}
            value={draft.notes}
            lines={3}
            onCommit={(notes) => shots.edit(setNotes(notes), { label: t('edits.notes') })}
          />
        </Group>
      )}
      <Group title={t('panels.footage.samples')}>
        <p class="muted">{t('panels.footage.samplesWhat')}</p>
        {SAMPLES.length === 0 && <p>{t('panels.footage.noSamples')}</p>}
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
              <span class="muted">{sampleWords(one)}</span>
            </li>
          ))}
          <li>
            <button type="button" onClick={() => openSampleSeries(desk)}>
              {t('panels.footage.series')}
            </button>
            <span class="muted">{t('panels.footage.seriesWhat')}</span>
          </li>
        </ul>
      </Group>
    </Panel>
  );
}

/** What a sample shows; one that has no words here says it itself. */
const sampleWords = ({ id, shot }: Sample): string =>
  isIn(english.panels.footage.sample, id) ? t(`panels.footage.sample.${id}`) : shot.notes;

const namedWords = ({ path, more }: NamedFootage): string =>
  more > 0 ? t('report.document.pathAndMore', { path, more: `${more}` }) : path;

/** Footage that has to be chosen, and what for. */
function Awaited({ waiting }: { readonly waiting: AwaitedFootage }) {
  const { awaited, askForAwaited } = useDesk().session;
  const { fileName, path, more, left } = waiting;
  return (
    <div class="notice notice-missing" data-code="footageAwaited">
      <p>
        {fileName === null && `${t('panels.footage.windowLeft')} `}
        {tRich('panels.footage.awaited', {
          named: fileName === null ? 'no' : 'yes',
          name: fileName ?? '',
          how: left === null ? 'choose' : left.ask ? 'open' : 'again',
          path: namedWords({ path, more }),
        })}
      </p>
      <div class="row">
        {left?.ask && (
          <button type="button" class="primary" onClick={() => void askForAwaited()}>
            {t('panels.footage.openAgain')}
          </button>
        )}
        <button
          type="button"
          class="plain"
          onClick={() => {
            awaited.value = null;
          }}
        >
          {t('panels.footage.doNotOpen')}
        </button>
      </div>
    </div>
  );
}

type Reload = 'sample' | 'copying' | 'copy' | 'handles' | 'none';

function FilmFacts(props: {
  readonly film: OpenFilm;
  /** How it comes back after a reload. */
  readonly reload: Reload | null;
}) {
  const { film, reload } = props;
  const { info, sha256 } = film;
  const size = sizeOf(film.files);
  return (
    <Facts
      facts={[
        [t('panels.footage.fact.file'), info.name],
        [
          t('panels.footage.fact.container'),
          `${containerWords(info.container)}, ${codecWords(info.codec)}`,
        ],
        [
          t('panels.footage.fact.size'),
          t('panels.footage.fact.sizeIs', {
            width: String(info.width),
            height: String(info.height),
            size: showNumberAt(size / 2 ** 20, 3),
          }),
        ],
        [t('panels.footage.fact.frames'), showCount(info.frameCount)],
        [
          t('panels.footage.fact.playback'),
          info.playbackRate === null
            ? t('panels.footage.fact.noneStated')
            : t('panels.framesPerSecond', { rate: showNumberAt(info.playbackRate, 5) }),
        ],
        [
          t('panels.footage.fact.rotation'),
          info.mirrored
            ? t('panels.footage.fact.rotationMirrored', { turn: String(info.rotation) })
            : `${info.rotation}°`,
        ],
        [
          t('panels.footage.fact.bitDepth'),
          t('panels.footage.fact.bits', { bits: String(info.bitDepth) }),
        ],
        ...fieldFacts(info),
        [
          t('panels.footage.fact.pixelShape'),
          info.pixelAspect === 1
            ? t('panels.footage.fact.square')
            : `${showNumberAt(info.pixelAspect, 4)} : 1`,
        ],
        [
          t('panels.footage.fact.sound'),
          t(info.hasAudio ? 'panels.footage.fact.yes' : 'panels.footage.fact.none'),
        ],
        [
          t('panels.footage.fact.decoder'),
          `${info.decoder.name}: ${reasonWords(info.decoder.why).message}`,
        ],
        ...(reload === null
          ? []
          : [[t('panels.footage.reload.title'), t(`panels.footage.reload.${reload}`)] as const]),
        [
          'SHA-256',
          sha256 === null ? t('panels.footage.fact.hashing') : <code>{sha256.slice(0, 16)}…</code>,
        ],
      ]}
    />
  );
}
