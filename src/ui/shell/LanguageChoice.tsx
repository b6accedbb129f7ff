import { LANGUAGE_NAMES, LANGUAGES, type Language } from '../../text/language';
import { language, speak, t } from '../../text/text';
import { useDesk } from '../desk';

/** The language of the page, each by its own name. */
export function LanguageChoice() {
  const { preferences, session, step } = useDesk();
  const choose = async (next: Language) => {
    try {
      await speak(next);
      preferences.language.value = next;
    } catch (error) {
      session.notices.report(step.value, error);
    }
  };
  return (
    <select
      class="language"
      aria-label={t('shell.header.language')}
      value={language.value}
      onChange={(event) => {
        const next = LANGUAGES.find((one) => one === event.currentTarget.value);
        if (next !== undefined) void choose(next);
      }}
    >
      {LANGUAGES.map((one) => (
        <option key={one} value={one} lang={one}>
          {LANGUAGE_NAMES[one]}
        </option>
      ))}
    </select>
  );
}
