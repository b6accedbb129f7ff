import { useState } from 'preact/hooks';
import { modesText, parseModes } from '../../app/cameraModes';
import type { CameraTrade, Sweep } from '../../app/resultTypes';
import { formatNumber, formatQuantity } from '../../core/format';
import type { Reason } from '../../core/reason';
import { ContourPlot } from '../../plots/ContourPlot';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { TextField } from '../fields/TextField';
import { WorkState } from '../panels/WorkState';
import { ReasonText } from '../shell/Notices';

const KINDS = [
  { value: 'pixelRate', label: 'pixels a second' },
  { value: 'modes', label: 'a table of its modes' },
] as const;

/** Other rates and fields of view: what the camera then gives up, and what the shot would give. */
export function PlanSweep() {
  const { planning } = useDesk().session;
  const work = planning.sweeping.value;
  return (
    <section class="stack" aria-label="Rate against field of view">
      <h3>Rate against field of view</h3>
      <TradeInputs />
      <WorkState work={work} doing="Working out other settings" onCancel={planning.cancelSweep}>
        {(found) => <Swept swept={found} />}
      </WorkState>
      {work.kind !== 'running' && (
        <div class="row">
          <button type="button" onClick={() => void planning.sweep()}>
            {work.kind === 'done' ? 'Compare again' : 'Compare rates and fields of view'}
          </button>
        </div>
      )}
    </section>
  );
}

function Swept({ swept }: { readonly swept: Sweep }) {
  const { planning } = useDesk().session;
  const { cells, best, rates, fields } = swept;
  const { camera, view } = planning.plan.value;
  const chosen = best === null ? undefined : cells[best];
  const stale = planning.isSweepStale.value;
  return (
    <div class="stack">
      {stale && (
        <p class="stale-word" role="status">
          The plan has changed: compare again. Below is what held before.
        </p>
      )}
      <ContourPlot
        rates={rates}
        fields={fields}
        cells={cells.map(({ plan, told }) =>
          told.ok && plan !== null
            ? { value: told.value.speedU / plan.speed.value, why: null }
            : { value: null, why: told.ok ? null : told.reason.message },
        )}
        best={best}
        planned={{ rate: camera.rate.value, across: view.across }}
      />
      {chosen?.told.ok && chosen.plan !== null ? (
        <>
          <p>
            Least uncertain: {formatQuantity({ value: chosen.rate, u: 0 }, 'rate', '/s')} and{' '}
            {formatNumber(1000 * chosen.across, 3)} mm across, {chosen.plan.camera.width} x{' '}
            {chosen.plan.camera.height} px, exposure{' '}
            {formatNumber(1e6 * chosen.plan.camera.exposure.value, 2)} µs: ±{' '}
            {formatNumber(chosen.told.value.speedU, 2)} m/s.
          </p>
          <div class="row">
            <button
              type="button"
              onClick={() => chosen.plan !== null && planning.replace(chosen.plan)}
            >
              Plan with these settings
            </button>
          </div>
        </>
      ) : (
        <p class="notice notice-warning">
          None of these settings can be filmed. Check speed, ball and camera.
        </p>
      )}
      <p class="muted">
        Speed, lens, lamps and everything else as planned. An exposure that does not fit into a
        frame is cut and the picture darkens; a known length that does not fit into the view gives
        way to one of nine tenths of it, known as well.
      </p>
    </div>
  );
}

/** What the camera gives up for a higher rate. */
function TradeInputs() {
  const { planning } = useDesk().session;
  const trade = planning.trade.value;
  const [problem, setProblem] = useState<Reason | null>(null);
  const set = (next: CameraTrade) => {
    setProblem(null);
    planning.trade.value = next;
  };
  const { camera } = planning.plan.value;
  return (
    <>
      <ChoiceField
        label="The camera is limited by"
        value={trade.kind}
        choices={KINDS}
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
            label="Pixels a second"
            rule={RULES.pixelRate}
            value={trade.pixelsPerSecond}
            onCommit={(next) => next !== null && set({ ...trade, pixelsPerSecond: next })}
          />
          <QuantityField
            label="At most along the flight"
            rule={RULES.pictureSide}
            value={trade.mostWidth}
            onCommit={(next) => next !== null && set({ ...trade, mostWidth: next })}
          />
          <QuantityField
            label="At most rows"
            rule={RULES.pictureSide}
            value={trade.mostHeight}
            onCommit={(next) => next !== null && set({ ...trade, mostHeight: next })}
          />
        </div>
      ) : (
        <>
          <TextField
            label="Modes, a line each: frames per second, width x height"
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
