/** Languages of the page, the first where none fits. Files and reports of the core stay English. */
export const LANGUAGES = ['en', 'de', 'es', 'fr'] as const;
export type Language = (typeof LANGUAGES)[number];

/** Each by its own name, so that it is found by those who read no other. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = {
  en: 'English',
  de: 'Deutsch',
  es: 'Español',
  fr: 'Français',
};

/** The first language asked for that there is; `preferred` are BCP 47 tags such as 'de-CH', best first. */
export function languageFor(preferred: readonly string[]): Language {
  for (const tag of preferred) {
    const wanted = tag.toLowerCase().split('-')[0];
    const found = LANGUAGES.find((one) => one === wanted);
    if (found !== undefined) return found;
  }
  return LANGUAGES[0];
}
