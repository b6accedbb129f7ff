import { missingInputs } from '../../app/draft';
import type { MeasuringStatus } from '../../app/measuring';
import { showCount } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ReasonText } from '../shell/Notices';

type Running = Extract<MeasuringStatus, { kind: 'running' }>;

export const stageWords = (stage: Running['stage']): string => t(`panels.measure.stage.${stage}`);

/** Starts and stops a measurement and says how far it is. */
export function Measure() {
  const desk = useDesk();
  const { measuring, measure, shots } = desk.session;
  const status = measuring.status.value;
  const draft = shots.draft.value;
  const freshness = measuring.freshness.value;
  const problem = measuring.refitProblem.value;
  const [missing] = draft === null ? [] : missingInputs(draft);
  if (status.kind === 'running') return <Progress status={status} />;
  return (
    <div class="stack">
      {status.kind === 'failed' && (
        <div class="notice notice-problem" role="alert" data-code={status.reason.code}>
          <ReasonText reason={status.reason} />
        </div>
      )}
      {missing !== undefined && (
        <div class="notice notice-missing">
          <ReasonText reason={missing.reason} />
          <button
            type="button"
            onClick={() => {
              desk.step.value = missing.step;
            }}
          >
            {t('panels.measure.goTo', { step: t(`shell.steps.${missing.step}`) })}
          </button>
        </div>
      )}
      {freshness === 'measureAgain' && (
        <div class="notice notice-warning" role="status">
          {problem === null ? (
            <p>{t('panels.measure.changed')}</p>
          ) : (
            <ReasonText reason={problem} />
          )}
        </div>
      )}
      <button
        type="button"
        class="primary measure"
        disabled={draft === null || missing !== undefined}
        onClick={() => void measure()}
      >
        {t(measuring.reduction.value === null ? 'panels.measure.measure' : 'panels.measure.again')}
      </button>
    </div>
  );
}

function Progress({ status }: { readonly status: Running }) {
  const { measuring } = useDesk().session;
  const { stage, done, total } = status;
  return (
    <div class="stack" role="status">
      <p>
        {total > 0
          ? t('panels.measure.progress', {
              stage: stageWords(stage),
              done: showCount(done),
              total: showCount(total),
            })
          : stageWords(stage)}
      </p>
      <progress
        {...(total > 0 ? { value: done, max: total } : {})}
        aria-label={t('panels.measure.measuring')}
      />
      <button type="button" class="cancel" onClick={() => void measuring.cancel()}>
        {t('panels.cancel')}
      </button>
    </div>
  );
}
