import { PREDICTIONS_CAUTION } from '../../app/cautions';
import { NOTEBOOK_COVERAGE } from '../../app/notebook';
import { type FoundFit, FREE_INPUTS } from '../../app/notebookFit';
import type { FreeKey } from '../../app/resultTypes';
import { expanded, type Quantity } from '../../core/estimate';
import { formatCount, formatNumber, percent, quantityParts } from '../../core/format';
import { useDesk } from '../desk';
import { MODEL_CARDS } from '../models/words';
import { WorkState } from '../panels/WorkState';
import { Wide } from '../result/Wide';
import { WarningBox } from '../shell/Notices';
import { ModelChoice, model } from './ModelChoice';

const FREE_WORDS: Readonly<Record<FreeKey, string>> = {
  gapDischarge: 'discharge of the gap (leak)',
  residualPressure: 'residual pressure',
  sealBurstPressure: 'seal burst pressure',
};

/** Inputs of the launcher that nobody measured, told from the shots that count. */
export function FitSection() {
  const { notebook } = useDesk().session;
  const { fit } = notebook;
  const work = fit.state.value;
  return (
    <section class="stack" aria-labelledby="fit-title">
      <h3 id="fit-title">Fit the launcher to the shots</h3>
      <div class="notebook-choice">
        <fieldset class="stack notebook-free">
          <legend>Set free, off by the same in every shot</legend>
          {FREE_INPUTS.map((key) => (
            <label class="option" key={key}>
              <input
                type="checkbox"
                checked={fit.free.value.includes(key)}
                onChange={(event) => fit.setFree(key, event.currentTarget.checked)}
              />
              {FREE_WORDS[key]}
            </label>
          ))}
        </fieldset>
        <ModelChoice />
        <label class="option">
          <input
            type="checkbox"
            checked={fit.withLeads.value}
            onChange={(event) => {
              fit.withLeads.value = event.currentTarget.checked;
            }}
          />
          Use the leads too
        </label>
        <button
          type="button"
          disabled={work.kind === 'running' || fit.free.value.length === 0}
          onClick={() => void fit.run(model.value, NOTEBOOK_COVERAGE)}
        >
          Fit
        </button>
      </div>
      {fit.isStale.value && (
        <p class="stale-word" role="status">
          The shots that count, or what is set free, changed: fit again. Below is the fit of before.
        </p>
      )}
      <WorkState work={work} doing="Fitting" onCancel={fit.cancel}>
        {(found) => (
          <div class={`stack ${fit.isStale.value ? 'notebook-stale' : ''}`}>
            <Found found={found} />
          </div>
        )}
      </WorkState>
    </section>
  );
}

const shown = (quantity: Quantity, unit: string): string => {
  const parts = quantityParts(expanded(quantity));
  if (parts === null) return '';
  const both =
    parts.exponent === '' ? `${parts.value} ± ${parts.u}` : `(${parts.value} ± ${parts.u})`;
  return `${both}${parts.exponent} ${unit}`.trim();
};

function Found({ found: { fit, model: name, shots, leftOut } }: { readonly found: FoundFit }) {
  const { parameters, correlations, birgeRatio, dof, chiSquare, probability, pulls } = fit;
  return (
    <>
      <Wide name="Fitted inputs">
        <table>
          <caption>
            {MODEL_CARDS[name].title}, {formatCount(shots)} shots ({percent(NOTEBOOK_COVERAGE)})
          </caption>
          <thead>
            <tr>
              <th scope="col">Input</th>
              <th scope="col" class="number">
                Fitted
              </th>
              <th scope="col" class="number">
                Off from what is stated
              </th>
              {parameters.map(({ key, source }) => (
                <th key={key} scope="col" class="number">
                  Correlation with {source}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {parameters.map(({ key, source, unit, shift, value }, i) => (
              <tr key={key}>
                <th scope="row">{source}</th>
                <td class="number">{value === null ? 'differs by shot' : shown(value, unit)}</td>
                <td class="number">{shown(shift, unit)}</td>
                {(correlations[i] ?? []).map((one, j) => (
                  <td key={parameters[j]?.key} class="number">
                    {formatNumber(one, 2)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
      <p>
        Chi-square {formatNumber(chiSquare, 3)} with {formatCount(dof)} degrees of freedom, Birge
        ratio {formatNumber(birgeRatio, 3)}:{' '}
        {probability >= 0.05
          ? 'what is left over is explained by the uncertainties.'
          : 'more is left over than the uncertainties explain, and theirs are enlarged by that ratio. The launcher scatters, or the model leaves something out.'}
      </p>
      {pulls.length > 0 && (
        <p>
          Held inputs that the shots would have otherwise:{' '}
          {pulls
            .map(({ source, inU }) => `${source} by ${formatNumber(inU, 2)} of its uncertainty`)
            .join(', ')}
          .
        </p>
      )}
      {fit.warnings.map((one) => (
        <WarningBox key={one.message} reason={one} />
      ))}
      <p class="muted">
        {leftOut > 0 &&
          `${formatCount(leftOut)} counted ${leftOut === 1 ? 'shot states' : 'shots state'} no whole launcher or no speed and took no part. `}
        A fitted input takes up whatever else the model lacks: it is no measurement of it.{' '}
        {PREDICTIONS_CAUTION}
      </p>
    </>
  );
}
