import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

export interface ChoiceFieldProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly { readonly value: T; readonly label: string }[];
  readonly hint?: ComponentChildren;
  onChange(value: T): void;
}

/** One of a few named values. */
export function ChoiceField<T extends string>(props: ChoiceFieldProps<T>) {
  const { label, value, choices, hint, onChange } = props;
  const id = useId();
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        onChange={(event) => {
          const chosen = choices.find((one) => one.value === event.currentTarget.value);
          if (chosen !== undefined) onChange(chosen.value);
        }}
      >
        {choices.map((one) => (
          <option key={one.value} value={one.value}>
            {one.label}
          </option>
        ))}
      </select>
      <div class="field-note">{hint}</div>
    </div>
  );
}
