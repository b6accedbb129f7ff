import { useRef } from 'preact/hooks';
import { useDesk } from '../desk';

/** Choosing files instead of dropping them. */
export function FileButtons() {
  const { openFiles } = useDesk().session;
  const files = useRef<HTMLInputElement>(null);
  const folder = useRef<HTMLInputElement>(null);
  const take = (input: HTMLInputElement) => {
    const chosen = [...(input.files ?? [])];
    // The same file chosen again must count as a choice.
    input.value = '';
    if (chosen.length > 0) void openFiles(chosen);
  };
  return (
    <div class="row">
      <button type="button" class="primary" onClick={() => files.current?.click()}>
        Choose files…
      </button>
      <button type="button" onClick={() => folder.current?.click()}>
        Choose a folder of images…
      </button>
      <input
        ref={files}
        type="file"
        multiple
        hidden
        data-role="files"
        aria-label="Clip, images or shot file"
        onChange={(event) => take(event.currentTarget)}
      />
      <input
        ref={folder}
        type="file"
        multiple
        hidden
        aria-label="Folder of images"
        {...{ webkitdirectory: true }}
        onChange={(event) => take(event.currentTarget)}
      />
    </div>
  );
}
