import type { ComponentChildren } from 'preact';
import type { Result } from '../../app/resultTypes';
import { findings } from '../../report/findings';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ReasonText } from '../shell/Notices';
import { FindingsList } from './FindingsList';

/** What else the film tells besides speed and burst. */
export function Findings({ result }: { readonly result: Result }) {
  const { breakUp } = result;
  const unit = useDesk().preferences.speedUnit.value;
  return (
    <section class="stack findings" aria-label={t('result.else.title')}>
      {breakUp !== null && (
        <div class="notice notice-warning" data-code={breakUp.reason.code}>
          <ReasonText reason={breakUp.reason} />
          <div class="row">
            <FrameLink frame={breakUp.frame}>
              {t('result.else.brokenFrom', { frame: `${breakUp.frame}` })}
            </FrameLink>
          </div>
        </div>
      )}
      <h3>{t('result.else.title')}</h3>
      <FindingsList findings={findings(result, unit)} />
    </section>
  );
}

function FrameLink(props: { readonly frame: number; readonly children: ComponentChildren }) {
  const desk = useDesk();
  return (
    <button type="button" onClick={() => desk.pick(props.frame)}>
      {props.children}
    </button>
  );
}
