import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { pickFiles } from '../../app/keeping/fileHandles';

/** A button that opens the browser's file dialogue. */
export function FileChoice(props: {
  /** What is chosen, for those who do not see the button. */
  readonly label: string;
  readonly children: ComponentChildren;
  readonly primary?: boolean;
  readonly folder?: boolean;
  readonly disabled?: boolean;
  /** Tells the input from others on the page. */
  readonly name?: string;
  onChoose(files: readonly File[]): void;
}) {
  const input = useRef<HTMLInputElement>(null);
  const choose = async () => {
    const picked = props.folder ? null : await pickFiles();
    if (picked === null) input.current?.click();
    else if (picked.length > 0) props.onChoose(picked);
  };
  return (
    <>
      <button
        type="button"
        class={props.primary ? 'primary' : ''}
        disabled={props.disabled ?? false}
        onClick={() => void choose()}
      >
        {props.children}
      </button>
      <input
        ref={input}
        type="file"
        multiple
        hidden
        data-role={props.name}
        aria-label={props.label}
        {...(props.folder ? { webkitdirectory: true } : {})}
        onChange={(event) => {
          const chosen = [...(event.currentTarget.files ?? [])];
          // The same file chosen again must count as a choice.
          event.currentTarget.value = '';
          if (chosen.length > 0) props.onChoose(chosen);
        }}
      />
    </>
  );
}
