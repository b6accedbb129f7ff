const PATHS = {
  done: 'M3 8.5l3.2 3.2L13 4.8',
  open: 'M8 3a5 5 0 1 0 .01 0z',
  needsYou: 'M8 3v6.2M8 11.6v1.6',
  previous: 'M10 3L5 8l5 5',
  next: 'M6 3l5 5-5 5',
  play: 'M5 3l8 5-8 5z',
  pause: 'M5.5 3v10M10.5 3v10',
  undo: 'M6 3L2.8 6.2 6 9.4M3 6.2h6.2a3.6 3.6 0 0 1 0 7.2H7',
  redo: 'M10 3l3.2 3.2L10 9.4M13 6.2H6.8a3.6 3.6 0 0 0 0 7.2H9',
  close: 'M3.5 3.5l9 9M12.5 3.5l-9 9',
  sheet: 'M2.5 3h11v10h-11zM9.5 3v10',
  theme: 'M8 2.5a5.5 5.5 0 1 0 .01 0zM8 2.5v11',
  help: 'M5.6 6a2.4 2.4 0 1 1 3.4 2.2c-.7.4-1 .9-1 1.6M8 12.2v1.2',
  magnify: 'M6.8 2.8a4 4 0 1 0 .01 0zM9.7 9.7l3.8 3.8',
  pair: 'M2.5 3h11v4h-11zM2.5 9h11v4h-11z',
  repeat: 'M4 6.5a4.5 4.5 0 0 1 8-1.5M12 9.5a4.5 4.5 0 0 1-8 1.5M12.4 2v3.2H9.2M3.6 14v-3.2h3.2',
  slant: 'M4 2.5l8 11M4 2.5v2M12 13.5v-2',
  fit: 'M3 6V3h3M10 3h3v3M13 10v3h-3M6 13H3v-3',
} as const;

export type IconName = keyof typeof PATHS;

/** A line drawing beside a word; it says nothing alone. */
export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg
      class="icon"
      width="16"
      height="16"
      viewBox="0 0 16 16"
      fill="none"
      stroke="currentColor"
      stroke-width="1.7"
      stroke-linecap="round"
      stroke-linejoin="round"
      aria-hidden="true"
    >
      <path d={PATHS[name]} />
    </svg>
  );
}
