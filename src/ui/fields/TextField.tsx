import { useId } from 'preact/hooks';

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly lines?: number;
  onCommit(value: string): void;
}

/** Free text, taken over when the field is left. */
export function TextField({ label, value, lines = 1, onCommit }: TextFieldProps) {
  const id = useId();
  const commit = (text: string) => text !== value && onCommit(text);
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {lines > 1 ? (
        <textarea
          id={id}
          rows={lines}
          value={value}
          onChange={(event) => commit(event.currentTarget.value)}
        />
      ) : (
        <input
          id={id}
          type="text"
          value={value}
          onChange={(event) => commit(event.currentTarget.value)}
        />
      )}
    </div>
  );
}
