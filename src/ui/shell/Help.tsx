import { t } from '../../text/text';
import { useDesk } from '../desk';
import { Icon } from './Icon';
import { KEYS } from './keys';

/** The keyboard, in a small panel. */
export function Help() {
  const desk = useDesk();
  if (!desk.helpOpen.value) return null;
  return (
    <section class="help" aria-labelledby="help-title">
      <div class="row help-head">
        <h2 id="help-title">{t('shell.help.title')}</h2>
        <button type="button" class="plain" onClick={() => (desk.helpOpen.value = false)}>
          <Icon name="close" /> {t('shell.help.close')}
        </button>
      </div>
      <dl>
        {KEYS.map((key) => (
          <div key={key}>
            <dt>{t(`shell.keys.${key}.keys`)}</dt>
            <dd>{t(`shell.keys.${key}.does`)}</dd>
          </div>
        ))}
      </dl>
      <label class="row help-keys">
        <input
          type="checkbox"
          checked={desk.preferences.singleKeys.value}
          onChange={(event) => {
            desk.preferences.singleKeys.value = event.currentTarget.checked;
          }}
        />
        {t('shell.help.singleKeys')}
      </label>
    </section>
  );
}
