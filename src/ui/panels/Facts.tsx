import type { ComponentChildren } from 'preact';

/** Name and value, one below the other. */
export function Facts(props: {
  readonly facts: readonly (readonly [name: string, value: ComponentChildren])[];
}) {
  return (
    <dl class="facts">
      {props.facts.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
