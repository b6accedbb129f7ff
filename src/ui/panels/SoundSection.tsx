import { setBackstop, setSound } from '../../app/edits';
import type { Shot } from '../../app/resultTypes';
import { useDesk } from '../desk';
import { EstimateField } from '../fields/EstimateField';
import { RULES } from '../fields/rules';
import { Group } from './Panel';

type Sound = NonNullable<Shot['sound']>;

/** What a phone's picture and sound may be apart while nobody has measured it, and how well a tape tells a place in a room. */
const UNMEASURED_OFFSET = { value: 0, u: 0.02 };
const TAPE_U = 0.01;
/** Where a microphone is put that no distance has been typed of yet. */
const FIRST_DISTANCE = { value: 1, u: 0.1 };

/** What has to be known before the sound track can be held against the film. */
export function SoundSection({ sound }: { readonly sound: Sound | null }) {
  const { shots, films } = useDesk().session;
  const heard = films.film.value?.info.hasAudio ?? false;
  return (
    <Group title="Sound">
      <label class="option">
        <input
          type="checkbox"
          checked={sound !== null}
          disabled={!heard && sound === null}
          onChange={(event) => {
            const used = event.currentTarget.checked;
            shots.edit(setSound(used ? UNPLACED : null), {
              label: used ? 'sound used' : 'sound left out',
            });
          }}
        />
        The sound track times burst and impact
      </label>
      {!heard && <p class="muted">This footage has no sound track.</p>}
      {sound !== null && <SoundInputs sound={sound} />}
    </Group>
  );
}

const UNPLACED: Sound = {
  offset: UNMEASURED_OFFSET,
  microphone: { distance: FIRST_DISTANCE, toBackstop: null },
  backstopDistance: null,
};

function SoundInputs({ sound }: { readonly sound: Sound }) {
  const { shots } = useDesk().session;
  const { offset, microphone, backstopDistance } = sound;
  const change = (next: Partial<Sound>, label: string) =>
    shots.edit(setSound({ ...sound, ...next }), { label });
  return (
    <>
      <EstimateField
        label="Offset of the sound"
        rule={RULES.soundOffset}
        value={offset}
        firstU={() => UNMEASURED_OFFSET.u}
        hint="Added to a time on the track it gives the time on the film. A filmed clap tells it."
        onCommit={(next) => next !== null && change({ offset: next }, 'offset of the sound')}
      />
      <EstimateField
        label="Microphone to muzzle"
        rule={RULES.microphoneDistance}
        value={microphone.distance}
        firstU={() => TAPE_U}
        onCommit={(distance) =>
          distance !== null &&
          change({ microphone: { ...microphone, distance } }, 'distance of the microphone')
        }
      />
      <EstimateField
        label="Backstop to muzzle"
        rule={RULES.backstopDistance}
        value={backstopDistance}
        firstU={() => TAPE_U}
        optional
        placeholder="no backstop"
        hint="Along the flight. With it the impact gives a mean speed."
        onCommit={(next) => shots.edit(setBackstop(next), { label: 'distance of the backstop' })}
      />
      {backstopDistance !== null && (
        <EstimateField
          label="Microphone to backstop"
          rule={RULES.microphoneDistance}
          value={microphone.toBackstop}
          firstU={() => TAPE_U}
          optional
          placeholder="not measured"
          hint="Not measured, it is anything the other two allow, and the mean speed much less well known."
          onCommit={(toBackstop) =>
            change(
              { microphone: { ...microphone, toBackstop } },
              'distance from microphone to backstop',
            )
          }
        />
      )}
    </>
  );
}
