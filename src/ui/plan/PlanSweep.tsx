import { useState } from 'preact/hooks';
import { modesText, parseModes } from '../../app/cameraModes';
import type { CameraTrade, Sweep } from '../../app/resultTypes';
import type { Reason } from '../../core/reason';
import { ContourPlot } from '../../plots/ContourPlot';
import { reasonWords } from '../../text/reasonWords';
import { showNumber, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { TextField } from '../fields/TextField';
import { WorkState } from '../panels/WorkState';
import { ReasonText } from '../shell/Notices';
import { usePlanEdits } from './edits';

const KINDS = ['pixelRate', 'modes'] as const;

/** Other rates and fields of view: what the camera then gives up, and what the shot would give. */
export function PlanSweep() {
  const { planning } = useDesk().session;
  const work = planning.sweeping.value;
  return (
    <section class="stack" aria-label={t('plan.sweep.title')}>
      <h3>{t('plan.sweep.title')}</h3>
      <TradeInputs />
      <WorkState work={work} doing={t('plan.sweep.working')} onCancel={planning.cancelSweep}>
        {(found) => <Swept swept={found} />}
      </WorkState>
      {work.kind !== 'running' && (
        <div class="row">
          <button type="button" onClick={() => void planning.sweep()}>
            {t(work.kind === 'done' ? 'plan.sweep.again' : 'plan.sweep.compare')}
          </button>
        </div>
      )}
    </section>
  );
}

function Swept({ swept }: { readonly swept: Sweep }) {
  const { planning } = useDesk().session;
  const edits = usePlanEdits();
  const { cells, best, rates, fields } = swept;
  const { camera, view } = planning.plan.value;
  const chosen = best === null ? undefined : cells[best];
  const stale = planning.isSweepStale.value;
  return (
    <div class="stack">
      {stale && (
        <p class="stale-word" role="status">
          {t('plan.sweep.stale')}
        </p>
      )}
      <ContourPlot
        rates={rates}
        fields={fields}
        cells={cells.map(({ plan, told }) =>
          told.ok && plan !== null
            ? { value: told.value.speedU / plan.speed.value, why: null }
            : { value: null, why: told.ok ? null : reasonWords(told.reason).message },
        )}
        best={best}
        planned={{ rate: camera.rate.value, across: view.across }}
      />
      {chosen?.told.ok && chosen.plan !== null ? (
        <>
          <p>
            {t('plan.sweep.best', {
              rate: showQuantity({ value: chosen.rate, u: 0 }, 'rate', '/s'),
              across: showNumber(1000 * chosen.across, 3),
              width: `${chosen.plan.camera.width}`,
              height: `${chosen.plan.camera.height}`,
              exposure: showNumber(1e6 * chosen.plan.camera.exposure.value, 2),
              u: showNumber(chosen.told.value.speedU, 2),
            })}
          </p>
          <div class="row">
            <button
              type="button"
              onClick={() =>
                chosen.plan !== null && planning.edit({ plan: chosen.plan }, edits.named('best'))
              }
            >
              {t('plan.sweep.take')}
            </button>
          </div>
        </>
      ) : (
        <p class="notice notice-warning">{t('plan.sweep.none')}</p>
      )}
      <p class="muted">{t('plan.sweep.what')}</p>
    </div>
  );
}

/** What the camera gives up for a higher rate. */
function TradeInputs() {
  const { planning } = useDesk().session;
  const trade = planning.trade.value;
  const edits = usePlanEdits();
  const [problem, setProblem] = useState<Reason | null>(null);
  const set = (next: CameraTrade) => {
    setProblem(null);
    edits.inputs({ trade: next });
  };
  const { camera } = planning.plan.value;
  return (
    <>
      <ChoiceField
        label={t('plan.sweep.limit')}
        value={trade.kind}
        choices={KINDS.map((value) => ({ value, label: t(`plan.sweep.${value}`) }))}
        onChange={(kind) =>
          kind !== trade.kind &&
          set(
            kind === 'modes'
              ? {
                  kind,
                  modes: [{ rate: camera.rate.value, width: camera.width, height: camera.height }],
                }
              : {
                  kind,
                  pixelsPerSecond: camera.rate.value * camera.width * camera.height,
                  mostWidth: camera.width,
                  mostHeight: camera.height,
                },
          )
        }
      />
      {trade.kind === 'pixelRate' ? (
        <div class="plan-trade">
          <QuantityField
            label={t('plan.sweep.pixelsPerSecond')}
            rule={RULES.pixelRate}
            value={trade.pixelsPerSecond}
            onCommit={(next) => next !== null && set({ ...trade, pixelsPerSecond: next })}
          />
          <QuantityField
            label={t('plan.sweep.mostWidth')}
            rule={RULES.pictureSide}
            value={trade.mostWidth}
            onCommit={(next) => next !== null && set({ ...trade, mostWidth: next })}
          />
          <QuantityField
            label={t('plan.sweep.mostHeight')}
            rule={RULES.pictureSide}
            value={trade.mostHeight}
            onCommit={(next) => next !== null && set({ ...trade, mostHeight: next })}
          />
        </div>
      ) : (
        <>
          <TextField
            label={t('plan.sweep.modesLabel')}
            lines={4}
            value={modesText(trade.modes)}
            onCommit={(text) => {
              const modes = parseModes(text);
              if (modes.ok) set({ kind: 'modes', modes: modes.value });
              else setProblem(modes.reason);
            }}
          />
          {problem !== null && (
            <div class="notice notice-problem" role="alert" data-code={problem.code}>
              <ReasonText reason={problem} />
            </div>
          )}
        </>
      )}
    </>
  );
}
