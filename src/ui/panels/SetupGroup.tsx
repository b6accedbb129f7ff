import { useId, useState } from 'preact/hooks';
import { missingInputs } from '../../app/draft';
import { setupFits, stillFollows } from '../../app/setups';
import { readSetup, saveAsSetup, takeSetup } from '../../app/setupWork';
import type { Outcome, Reason } from '../../core/reason';
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
    <Group title="Setup">
      <p class="muted">
        Clock, scale, lens, plane and muzzle of one camera position: calibrated once, used for many
        shots.
      </p>
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
    return <p>This shot names a setup that is not known in this browser.</p>;
  }
  return (
    <p>
      This shot follows <strong>{setup.name}</strong>
      {stillFollows(draft, setup)
        ? '.'
        : '; its clock, scale or muzzle were changed since, for this shot alone.'}
      {setup.scene === null &&
        ' It was saved before the shot was measured: the first shot measured in it is what the others are held against.'}
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
        label="Known setups"
        value={setup.id}
        choices={known.map((one) => ({ value: one.id, label: one.name }))}
        hint={fits !== null && !fits.ok ? fits.reason.message : undefined}
        onChange={setChosen}
      />
      <div class="row">
        <button
          type="button"
          disabled={!fits?.ok}
          onClick={() => tell(takeSetup(desk.session, setup))}
        >
          Use it for this shot
        </button>
        <button type="button" onClick={() => void saveSetup(desk, setup)}>
          Save it to a file…
        </button>
        <button type="button" class="plain" onClick={() => setups.forget(setup.id)}>
          Forget it
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
        const saved = saveAsSetup(desk.session, name.trim());
        tell(saved);
        if (saved.ok) setName('');
      }}
    >
      <div class="field">
        <label for={id}>Name of a new setup</label>
        <input
          id={id}
          type="text"
          autocomplete="off"
          value={name}
          onInput={(event) => setName(event.currentTarget.value)}
        />
        <div class="field-note">
          {missing !== undefined && 'Can be saved once clock, scale and muzzle are stated.'}
        </div>
      </div>
      <div class="row">
        <button type="submit" disabled={missing !== undefined || name.trim() === ''}>
          Save this calibration as a setup
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
        label="Setup file"
        name="setup-file"
        onChoose={(files) => {
          const [file] = files;
          if (file !== undefined) void readSetup(session, file).then(tell);
        }}
      >
        Open a setup file…
      </FileChoice>
    </div>
  );
}
