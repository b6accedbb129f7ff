import { useEffect, useRef } from 'preact/hooks';
import type { StepName } from '../../app/draft';
import type { Notice } from '../../app/notices';
import type { Reason } from '../../core/reason';
import { reasonWords } from '../../text/reasonWords';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { Icon } from './Icon';

/** What went wrong or should be known in a step, each with what to do about it. */
export function Notices({ step }: { readonly step: StepName }) {
  const { notices } = useDesk().session;
  const here = notices.list.value.filter((one) => one.place === step);
  return (
    <>
      {here.map((one) => (
        <NoticeBox key={one.id} notice={one} />
      ))}
    </>
  );
}

function NoticeBox({ notice: { id, tone, reason, actions } }: { readonly notice: Notice }) {
  const { notices } = useDesk().session;
  const box = useRef<HTMLDivElement>(null);
  // On a phone the sheet lies below the film: what went wrong there would not be seen.
  useEffect(() => {
    if (tone === 'problem') box.current?.scrollIntoView({ block: 'nearest' });
  }, [tone]);
  return (
    <div
      ref={box}
      class={`notice notice-${tone}`}
      role={tone === 'problem' ? 'alert' : 'status'}
      data-code={reason.code}
    >
      <ReasonText reason={reason} />
      <div class="row">
        {actions.map((action) => (
          <button
            key={action.does}
            type="button"
            onClick={() => {
              notices.dismiss(id);
              action.run(t(`shell.notices.${action.does}`));
            }}
          >
            {t(`shell.notices.${action.does}`)}
          </button>
        ))}
        <button type="button" class="plain" onClick={() => notices.dismiss(id)}>
          <Icon name="close" /> {t('shell.notices.dismiss')}
        </button>
      </div>
    </div>
  );
}

interface ReasonProps {
  readonly reason: Reason;
  /** Puts the message into a sentence: says what it is of. */
  readonly say?: (message: string) => string;
}

/** A reason in the place of what it explains. */
export function ReasonText({ reason, say = String }: ReasonProps) {
  const { message, remedy } = reasonWords(reason);
  return (
    <p>
      {say(message)}
      {remedy !== undefined && <span class="remedy"> {remedy}</span>}
    </p>
  );
}

/** A standing warning, word and icon. */
export function WarningBox({ reason, say = String }: ReasonProps) {
  return (
    <div class="notice notice-warning" data-code={reason.code}>
      <p class="notice-word">
        <Icon name="needsYou" /> {t('shell.notices.warning')}
      </p>
      <ReasonText reason={reason} say={say} />
    </div>
  );
}
