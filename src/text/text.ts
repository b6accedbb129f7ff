import { computed, signal } from '@preact/signals';
import { IntlMessageFormat } from 'intl-messageformat';
import { type ComponentChildren, h } from 'preact';
import type { Catalogue, ReasonText, TextKey, ValuesOf } from './catalogue';
import { english } from './en';
import type { Language } from './language';

interface Spoken {
  readonly language: Language;
  readonly catalogue: Catalogue;
}

const ENGLISH: Spoken = { language: 'en', catalogue: { texts: english, reasons: {} } };

const spoken = signal<Spoken>(ENGLISH);

/** The language the page is in: what reads it in a component is drawn again when it changes. */
export const language = computed(() => spoken.value.language);

const LOADERS: Readonly<Record<Exclude<Language, 'en'>, () => Promise<Catalogue>>> = {
  de: async () => (await import('./de')).german,
  es: async () => (await import('./es')).spanish,
  fr: async () => (await import('./fr')).french,
};

let wanted: Language = 'en';

/** Fetches a language and puts the page into it; the last one asked for stands. Fails where it cannot be fetched. */
export async function speak(next: Language): Promise<void> {
  wanted = next;
  const found = next === 'en' ? ENGLISH : { language: next, catalogue: await LOADERS[next]() };
  if (wanted === next) spoken.value = found;
}

/** Parsed once: a message is shown far more often than it changes. */
const parsed = new Map<string, IntlMessageFormat>();

function messageOf(text: string, of: Language): IntlMessageFormat {
  const name = `${of}:${text}`;
  const known = parsed.get(name);
  if (known !== undefined) return known;
  const made = new IntlMessageFormat(text, of);
  parsed.set(name, made);
  return made;
}

function textAt(tree: unknown, path: string): string {
  let at = tree;
  for (const key of path.split('.')) at = (at as Readonly<Record<string, unknown>>)[key];
  return String(at);
}

type Given = readonly [values?: Readonly<Record<string, string | number>>];

/** A text of the page in its language, its values filled in. */
export function t<Key extends TextKey>(key: Key, ...given: ValuesOf<Key>): string {
  const [values] = given as Given;
  const { language: now, catalogue } = spoken.value;
  return String(messageOf(textAt(catalogue.texts, key), now).format(values));
}

/** The same for a text with a part in <strong>. */
export function tRich<Key extends TextKey>(key: Key, ...given: ValuesOf<Key>): ComponentChildren {
  const [values] = given as Given;
  const { language: now, catalogue } = spoken.value;
  const strong = (parts: readonly ComponentChildren[]) => h('strong', null, parts);
  return messageOf(textAt(catalogue.texts, key), now).format<ComponentChildren>({
    ...values,
    strong,
  });
}

/** The same for a text with parts marked <name>…</name>, each made of its text by the mark of its name. */
export function tMarked<Mark>(
  key: TextKey,
  values: Readonly<Record<string, string | number>>,
  marks: Readonly<Record<string, (text: string) => Mark>>,
): readonly (string | Mark)[] {
  const { language: now, catalogue } = spoken.value;
  const made = Object.entries(marks).map(
    ([name, mark]) => [name, (parts: readonly unknown[]) => mark(parts.join(''))] as const,
  );
  const said = messageOf(textAt(catalogue.texts, key), now).format<string | Mark>({
    ...values,
    ...Object.fromEntries(made),
  });
  return Array.isArray(said) ? said : [said];
}

/** What a reason of this code says in the page's language; undefined where that has no words for it. */
export function reasonText(name: string): ReasonText | undefined {
  const { reasons } = spoken.value.catalogue;
  return Object.hasOwn(reasons, name) ? reasons[name] : undefined;
}

/** Fills a text of the page's language; throws where it needs a value that is not there. */
export const filled = (text: string, values: Readonly<Record<string, string | number>>): string =>
  String(messageOf(text, spoken.value.language).format(values));
