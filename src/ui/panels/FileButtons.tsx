import { useDesk } from '../desk';
import { FileChoice } from './FileChoice';

/** Choosing files instead of dropping them. */
export function FileButtons() {
  const { openFiles } = useDesk().session;
  const take = (files: readonly File[]) => void openFiles(files);
  return (
    <div class="row">
      <FileChoice label="Clip, images or shot file" name="files" primary onChoose={take}>
        Choose files…
      </FileChoice>
      <FileChoice label="Folder of images" folder onChoose={take}>
        Choose a folder of images…
      </FileChoice>
    </div>
  );
}
