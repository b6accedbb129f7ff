import type { ComponentChildren } from 'preact';

/** What may be wider than a narrow window: it scrolls by itself, by keyboard too. */
export function Wide(props: {
  readonly name: string;
  readonly look?: string;
  readonly children: ComponentChildren;
}) {
  const { name, look = '', children } = props;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys scroll it once it is focused
    <section class={`scroll-x ${look}`} aria-label={name} tabIndex={0}>
      {children}
    </section>
  );
}
