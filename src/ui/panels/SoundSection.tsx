import { setBackstop, setSound } from '../../app/edits';
import type { Shot } from '../../app/resultTypes';
import { t } from '../../text/text';
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
    <Group title={t('panels.sound.title')}>
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
        {t('panels.sound.times')}
      </label>
      {!heard && <p class="muted">{t('panels.sound.none')}</p>}
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
        label={t('panels.sound.offset')}
        rule={RULES.soundOffset}
        value={offset}
        firstU={() => UNMEASURED_OFFSET.u}
        hint={t('panels.sound.offsetHint')}
        onCommit={(next) => next !== null && change({ offset: next }, 'offset of the sound')}
      />
      <EstimateField
        label={t('panels.sound.microphone')}
        rule={RULES.microphoneDistance}
        value={microphone.distance}
        firstU={() => TAPE_U}
        onCommit={(distance) =>
          distance !== null &&
          change({ microphone: { ...microphone, distance } }, 'distance of the microphone')
        }
      />
      <EstimateField
        label={t('panels.sound.backstop')}
        rule={RULES.backstopDistance}
        value={backstopDistance}
        firstU={() => TAPE_U}
        optional
        placeholder={t('panels.sound.noBackstop')}
        hint={t('panels.sound.backstopHint')}
        onCommit={(next) => shots.edit(setBackstop(next), { label: t('edits.backstop') })}
      />
      {backstopDistance !== null && (
        <EstimateField
          label={t('panels.sound.toBackstop')}
          rule={RULES.microphoneDistance}
          value={microphone.toBackstop}
          firstU={() => TAPE_U}
          optional
          placeholder={t('panels.sound.notMeasured')}
          hint={t('panels.sound.toBackstopHint')}
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
