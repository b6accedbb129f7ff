import { useId, useState } from 'preact/hooks';

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly lines?: number;
  readonly placeholder?: string;
  onCommit(value: string): void;
}

/** Free text, taken over when the field is left. */
export function TextField(props: TextFieldProps) {
  const { label, value, lines = 1, placeholder = '', onCommit } = props;
  const id = useId();
  // Typed over one value: when that changes from elsewhere (undo) the text goes.
  const [typed, setTyped] = useState<{ text: string; over: string } | null>(null);
  const text = typed !== null && typed.over === value ? typed.text : null;
  const commit = () => {
    setTyped(null);
    if (text !== null && text !== value) onCommit(text);
  };
  const type = (next: string) => setTyped({ text: next, over: value });
  const common = { id, placeholder, value: text ?? value, onBlur: commit };
  const rest = text === null ? '' : undefined;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {lines > 1 ? (
        <textarea
          {...common}
          rows={lines}
          data-at-rest={rest}
          onInput={(event) => type(event.currentTarget.value)}
        />
      ) : (
        <input
          {...common}
          type="text"
          data-at-rest={rest}
          onInput={(event) => type(event.currentTarget.value)}
          onKeyDown={(event) => event.key === 'Enter' && commit()}
        />
      )}
    </div>
  );
}
