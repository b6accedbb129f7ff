import { t } from '../../text/text';
import { useDesk } from '../desk';
import { FileChoice } from './FileChoice';

/** Choosing files instead of dropping them. */
export function FileButtons() {
  const { openFiles } = useDesk().session;
  const take = (files: readonly File[]) => void openFiles(files);
  return (
    <div class="row">
      <FileChoice label={t('panels.footage.chooseFilesLabel')} name="files" primary onChoose={take}>
        {t('panels.footage.chooseFiles')}
      </FileChoice>
      <FileChoice label={t('panels.footage.chooseFolderLabel')} folder onChoose={take}>
        {t('panels.footage.chooseFolder')}
      </FileChoice>
    </div>
  );
}
