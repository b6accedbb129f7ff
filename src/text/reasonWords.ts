import type { Reason, ReasonValues } from '../core/reason';
import { modelWords, sourceWords } from './names';
import { inLanguage } from './numbers';
import { filled, language, reasonText, t } from './text';

/** Values that the core says by names of its own. */
const NAMES: Readonly<Record<string, (name: string) => string>> = {
  source: sourceWords,
  model: modelWords,
};

/** A reason in the page's language; in English, as the core says it, where that has no words for it. */
export function reasonWords(reason: Reason): Pick<Reason, 'message' | 'remedy'> {
  try {
    return inWords(reason.code, reason.values ?? {}) ?? reason;
  } catch {
    // Said without a value these words need: a file of an earlier version, or another place that gives the code.
    return reason;
  }
}

/** Null where the page's language has no words for the code; throws where they need a value that is not there. */
function inWords(name: string, given: ReasonValues): Pick<Reason, 'message' | 'remedy'> | null {
  const text = reasonText(name);
  if (text === undefined) return null;
  const values = Object.fromEntries(
    Object.entries(given).map(([key, value]) => [key, valueWords(key, value)]),
  );
  const { because, about, ...others } = given;
  // The reason behind it shares its values, and lends its remedy where there is no other.
  const behind = because === undefined ? null : inWords(`${because}`, others);
  if (because !== undefined) values.because = behind?.message ?? missing(`${because}`);
  const said = filled(text.message, values);
  const message = about === undefined ? said : t('shell.about', { about, message: said });
  const remedy = text.remedy === undefined ? behind?.remedy : filled(text.remedy, values);
  return remedy === undefined ? { message } : { message, remedy };
}

const valueWords = (name: string, value: string | number): string | number => {
  if (typeof value === 'number') return value;
  return NAMES[name]?.(value) ?? inLanguage(value, language.value);
};

function missing(name: string): never {
  throw new Error(`no words for ${name}`);
}
