import { useId, useState } from 'preact/hooks';
import { missingInputs } from '../../app/draft';
import { setupFits, stillFollows } from '../../app/setups';
import { readSetup, saveAsSetup, takeSetup } from '../../app/setupWork';
import type { Outcome, Reason } from '../../core/reason';
import { reasonWords } from '../../text/reasonWords';
import { t, tRich } from '../../text/text';
import { saveSetup } from '../actions';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { ReasonText } from '../shell/Notices';
import { FileChoice } from './FileChoice';
import { Group } from './Panel';

/** Clock, scale, lens, plane and muzzle of one camera position, calibrated once and taken over by other shots. */
export function SetupGroup() {
  const [wrong, setWrong] = useState<Reason | null>(null);
  const tell = (outcome: Outcome<unknown>) => setWrong(outcome.ok ? null : outcome.reason);
  const { setups } = useDesk().session;
  return (
    <Group title={t('panels.setup.title')}>
      <p class="muted">{t('panels.setup.what')}</p>
      <Followed />
      {wrong !== null && (
        <div class="notice notice-problem" role="alert" data-code={wrong.code}>
          <ReasonText reason={wrong} />
        </div>
      )}
      {setups.list.value.length > 0 && <Known tell={tell} />}
      <Save tell={tell} />
      <FileFrom tell={tell} />
    </Group>
  );
}

interface Telling {
  tell(outcome: Outcome<unknown>): void;
}

/** What the shot follows, and whether it still does. */
function Followed() {
  const { shots, setups } = useDesk().session;
  const draft = shots.draft.value;
  // Followed through the list, so that a setup forgotten or added is noticed.
  const setup = setups.list.value.find((one) => one.id === draft?.setupId);
  if (draft === null || draft.setupId === null) return null;
  if (setup === undefined) {
    return <p>{t('panels.setup.unknown')}</p>;
  }
  return (
    <p>
      {tRich(stillFollows(draft, setup) ? 'panels.setup.follows' : 'panels.setup.changed', {
        name: setup.name,
      })}
      {setup.scene === null && ` ${t('panels.setup.noScene')}`}
    </p>
  );
}

function Known({ tell }: Telling) {
  const desk = useDesk();
  const { setups, shots, films } = desk.session;
  const [chosen, setChosen] = useState<string | null>(null);
  const known = setups.list.value;
  const id = chosen ?? shots.draft.value?.setupId ?? null;
  const setup = known.find((one) => one.id === id) ?? known[0];
  if (setup === undefined) return null;
  const film = films.film.value;
  const fits = film === null ? null : setupFits(setup, film.info);
  return (
    <>
      <ChoiceField
        label={t('panels.setup.known')}
        value={setup.id}
        choices={known.map((one) => ({ value: one.id, label: one.name }))}
        hint={fits !== null && !fits.ok ? reasonWords(fits.reason).message : undefined}
        onChange={setChosen}
      />
      <div class="row">
        <button
          type="button"
          disabled={!fits?.ok}
          onClick={() =>
            tell(takeSetup(desk.session, setup, t('edits.setup', { name: setup.name })))
          }
        >
          {t('panels.setup.use')}
        </button>
        <button type="button" onClick={() => void saveSetup(desk, setup)}>
          {t('panels.setup.toFile')}
        </button>
        <button type="button" class="plain" onClick={() => setups.forget(setup.id)}>
          {t('panels.setup.forget')}
        </button>
      </div>
    </>
  );
}

/** Keeps what this shot is calibrated with. */
function Save({ tell }: Telling) {
  const desk = useDesk();
  const draft = desk.session.shots.draft.value;
  const [name, setName] = useState('');
  const id = useId();
  if (draft === null) return null;
  const [missing] = missingInputs(draft);
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        const saved = saveAsSetup(
          desk.session,
          name.trim(),
          t('edits.setup', { name: name.trim() }),
        );
        tell(saved);
        if (saved.ok) setName('');
      }}
    >
      <div class="field">
        <label for={id}>{t('panels.setup.name')}</label>
        <input
          id={id}
          type="text"
          autocomplete="off"
          value={name}
          onInput={(event) => setName(event.currentTarget.value)}
        />
        <div class="field-note">{missing !== undefined && t('panels.setup.once')}</div>
      </div>
      <div class="row">
        <button type="submit" disabled={missing !== undefined || name.trim() === ''}>
          {t('panels.setup.save')}
        </button>
      </div>
    </form>
  );
}

function FileFrom({ tell }: Telling) {
  const { session } = useDesk();
  return (
    <div class="row">
      <FileChoice
        label={t('panels.setup.file')}
        name="setup-file"
        onChoose={(files) => {
          const [file] = files;
          if (file !== undefined) void readSetup(session, file).then(tell);
        }}
      >
        {t('panels.setup.open')}
      </FileChoice>
    </div>
  );
}
