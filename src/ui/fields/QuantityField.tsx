import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';
import type { QuantityRule } from '../../core/quantityText';
import { fieldText, readField } from '../../text/numbers';
import { reasonWords } from '../../text/reasonWords';
import { showAs } from '../../text/show';
import { language } from '../../text/text';

export interface QuantityFieldProps {
  readonly label: string;
  readonly rule: QuantityRule;
  /** SI; null: not stated. */
  readonly value: number | null;
  /** May be left empty; `onCommit` then gets null. */
  readonly optional?: boolean;
  readonly placeholder?: string;
  readonly hint?: ComponentChildren;
  readonly hideLabel?: boolean;
  readonly disabled?: boolean;
  onCommit(value: number | null): void;
}

/**
 * A quantity typed with or without its unit, checked while it is typed and taken over on Enter or when the
 * field is left. Text that cannot be read stays as it is, with what is wrong beneath it.
 */
export function QuantityField(props: QuantityFieldProps) {
  const { label, rule, value, optional = false, placeholder, hint, hideLabel, disabled } = props;
  const id = useId();
  // Typed over one value: when that changes from elsewhere (undo, a handle on the film) the text goes.
  const [typed, setTyped] = useState<{ text: string; over: number | null } | null>(null);
  const text = typed !== null && typed.over === value ? typed.text : null;

  const parsed = text === null ? null : readField(text, rule, language.value);
  const isBlank = text !== null && text.trim() === '';
  const problem =
    parsed === null || parsed.ok || (isBlank && optional) ? null : reasonWords(parsed.reason);
  const commit = () => {
    if (text === null || problem !== null) return;
    const next = isBlank ? null : parsed?.ok ? parsed.value : value;
    setTyped(null);
    if (next !== value) props.onCommit(next);
  };
  return (
    <div class="field">
      <label for={id} class={hideLabel ? 'hidden-text' : undefined}>
        {label}
      </label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        disabled={disabled ?? false}
        placeholder={showAs(placeholder ?? '')}
        value={
          text ?? (value === null ? '' : fieldText(value, rule.kind, rule.unit, language.value))
        }
        aria-invalid={problem !== null}
        data-at-rest={text === null ? '' : undefined}
        aria-describedby={`${id}-note`}
        onInput={(event) => setTyped({ text: event.currentTarget.value, over: value })}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit();
          if (event.key === 'Escape') setTyped(null);
        }}
      />
      <div id={`${id}-note`} class="field-note">
        {problem === null ? (
          hint
        ) : (
          <span class="field-problem" role="alert">
            {problem.message} {problem.remedy}
          </span>
        )}
      </div>
    </div>
  );
}
