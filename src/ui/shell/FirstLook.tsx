import { FIRST_SAMPLE } from '../../app/firstLook';
import type { Result } from '../../app/resultTypes';
import { isAvailable } from '../../core/estimate';
import { leadLine, velocityNumber } from '../../report/statement';
import { showPercent } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { FileChoice } from '../panels/FileChoice';
import { LineText } from '../result/LineText';
import { Icon } from './Icon';

/** What the tool does, what it found of the sample it opens with, and how to go on with a film of one's own. */
export function FirstLook() {
  const desk = useDesk();
  const { sample, firstLook, films, awaited, measuring, openFiles } = desk.session;
  const other = films.film.value !== null && sample.value?.id !== FIRST_SAMPLE;
  // The other steps are for work: there it would only push the film off a small screen.
  if (desk.step.value !== 'footage' || !desk.introOpen.value) return null;
  if (other || awaited.value !== null) return null;
  const result = measuring.reduction.value?.result ?? firstLook.value;
  return (
    <section class="first-look" aria-labelledby="first-look-title">
      <div>
        <h2 id="first-look-title">{t('shell.firstLook.title')}</h2>
        <p>{t('shell.firstLook.what')}</p>
      </div>
      {result !== null && <Found result={result} />}
      <div>
        <h3>{t('shell.firstLook.own')}</h3>
        <p>{t('shell.firstLook.how')}</p>
        <div class="row">
          <FileChoice
            label={t('panels.footage.chooseFilesLabel')}
            name="first-files"
            primary
            onChoose={(files) => void openFiles(files)}
          >
            {t('panels.footage.chooseFiles')}
          </FileChoice>
          <button
            type="button"
            class="plain"
            onClick={() => {
              desk.introOpen.value = false;
            }}
          >
            <Icon name="close" /> {t('shell.firstLook.close')}
          </button>
        </div>
      </div>
    </section>
  );
}

function Found({ result }: { readonly result: Result }) {
  const desk = useDesk();
  const { exitVelocity, lead, shot } = result;
  if (!isAvailable(exitVelocity)) return null;
  const unit = desk.preferences.speedUnit.value;
  return (
    <div>
      <h3>{t('shell.firstLook.sample', { shot })}</h3>
      <p class="headline" data-role="first-speed">
        v = {velocityNumber(exitVelocity, unit)}{' '}
        <span class="coverage">({showPercent(exitVelocity.coverage)})</span>
      </p>
      {isAvailable(lead) && (
        <p>
          <LineText line={leadLine(lead)} />
        </p>
      )}
      <button
        type="button"
        onClick={() => {
          const used = result.positions.filter((one) => one.used);
          const middle = used[used.length >> 1];
          if (middle !== undefined) desk.pick(middle.frame);
          desk.step.value = 'result';
          desk.preferences.sheetOpen.value = true;
          desk.introOpen.value = false;
        }}
      >
        {t('shell.firstLook.see')}
      </button>
    </div>
  );
}
