import type { StepName } from '../../app/draft';
import type { Reason } from '../../core/reason';
import { useDesk } from '../desk';
import { Icon } from './Icon';

/** What went wrong or should be known in a step, each with what to do about it. */
export function Notices({ step }: { readonly step: StepName }) {
  const { notices } = useDesk().session;
  const here = notices.list.value.filter((one) => one.place === step);
  return (
    <>
      {here.map((one) => (
        <div
          key={one.id}
          class={`notice notice-${one.tone}`}
          role={one.tone === 'problem' ? 'alert' : 'status'}
          data-code={one.reason.code}
        >
          <ReasonText reason={one.reason} />
          <div class="row">
            {one.actions.map((action) => (
              <button
                key={action.label}
                type="button"
                onClick={() => {
                  notices.dismiss(one.id);
                  action.run();
                }}
              >
                {action.label}
              </button>
            ))}
            <button type="button" class="plain" onClick={() => notices.dismiss(one.id)}>
              <Icon name="close" /> Dismiss
            </button>
          </div>
        </div>
      ))}
    </>
  );
}

/** A reason in the place of what it explains. */
export function ReasonText({ reason }: { readonly reason: Reason }) {
  return (
    <p>
      {reason.message}
      {reason.remedy !== undefined && <span class="remedy"> {reason.remedy}</span>}
    </p>
  );
}

/** A standing warning, word and icon. */
export function WarningBox({ reason }: { readonly reason: Reason }) {
  return (
    <div class="notice notice-warning" data-code={reason.code}>
      <p class="notice-word">
        <Icon name="needsYou" /> Warning
      </p>
      <ReasonText reason={reason} />
    </div>
  );
}
