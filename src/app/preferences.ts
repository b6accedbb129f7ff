import { effect, type Signal, signal } from '@preact/signals';

/** How a person likes the page; kept in the browser, no part of a shot. */
export const SPEED_UNITS = ['m/s', 'ft/s', 'km/h', 'mph'] as const;
export type SpeedUnit = (typeof SPEED_UNITS)[number];
export const THEMES = ['system', 'light', 'dark'] as const;
export type Theme = (typeof THEMES)[number];

export interface Preferences {
  /** A language's code; null: the first one the browser asks for. */
  readonly language: Signal<string | null>;
  readonly speedUnit: Signal<SpeedUnit>;
  readonly theme: Signal<Theme>;
  readonly sheetOpen: Signal<boolean>;
  /** Whether each step's explanation is unfolded. */
  readonly explainOpen: Signal<boolean>;
  /** Whether single letters and digits do something; off, they cannot be hit by mistake (WCAG 2.2, 2.1.4). */
  readonly singleKeys: Signal<boolean>;
}

const KEY = 'exitframe-preferences';

export function createPreferences(storage: Storage): Preferences {
  const kept = read(storage);
  const preferences = {
    language: signal(typeof kept.language === 'string' ? kept.language : null),
    speedUnit: signal(oneOf(SPEED_UNITS, kept.speedUnit)),
    theme: signal(oneOf(THEMES, kept.theme)),
    sheetOpen: signal(kept.sheetOpen !== false),
    explainOpen: signal(kept.explainOpen === true),
    singleKeys: signal(kept.singleKeys !== false),
  };
  effect(() => {
    const { language, speedUnit, theme, sheetOpen, explainOpen, singleKeys } = preferences;
    const now = {
      language: language.value,
      speedUnit: speedUnit.value,
      theme: theme.value,
      sheetOpen: sheetOpen.value,
      explainOpen: explainOpen.value,
      singleKeys: singleKeys.value,
    };
    try {
      storage.setItem(KEY, JSON.stringify(now));
    } catch {
      // A browser that stores nothing: the choice holds for this visit.
    }
  });
  return preferences;
}

function oneOf<T extends string>(choices: readonly [T, ...T[]], value: unknown): T {
  return choices.find((choice) => choice === value) ?? choices[0];
}

function read(storage: Storage): Record<string, unknown> {
  try {
    const data: unknown = JSON.parse(storage.getItem(KEY) ?? '{}');
    return typeof data === 'object' && data !== null ? (data as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}
