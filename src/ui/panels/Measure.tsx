import { missingInputs } from '../../app/draft';
import type { MeasuringStatus } from '../../app/measuring';
import { STEP_TITLES } from '../../app/steps';
import { formatCount } from '../../core/format';
import { useDesk } from '../desk';
import { ReasonText } from '../shell/Notices';

type Running = Extract<MeasuringStatus, { kind: 'running' }>;

export const STAGE_WORDS: Readonly<Record<Running['stage'], string>> = {
  starting: 'Starting',
  background: 'Learning the still background',
  survey: 'Looking through every frame',
  track: 'Following the ball',
  centres: 'Measuring centres',
  fit: 'Fitting the path',
  uncertainty: 'Working out the uncertainty',
};

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
            Go to {STEP_TITLES[missing.step]}
          </button>
        </div>
      )}
      {freshness === 'measureAgain' && (
        <div class="notice notice-warning" role="status">
          {problem === null ? (
            <p>
              Inputs changed after the result was measured. Measure again to bring it up to date.
            </p>
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
        {measuring.reduction.value === null ? 'Measure' : 'Measure again'}
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
        {STAGE_WORDS[stage]}
        {total > 0 && `: ${formatCount(done)} of ${formatCount(total)}`}
      </p>
      <progress {...(total > 0 ? { value: done, max: total } : {})} aria-label="Measuring" />
      <button type="button" class="cancel" onClick={() => void measuring.cancel()}>
        Cancel
      </button>
    </div>
  );
}
