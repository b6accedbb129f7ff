import { NOTEBOOK_COVERAGE } from '../../app/notebook';
import { type FoundFit, FREE_INPUTS } from '../../app/notebookFit';
import { expanded, type Quantity } from '../../core/estimate';
import { quantityParts } from '../../core/format';
import { showAs, showCount, showList, showNumber, showPercent } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { modelTitle } from '../models/words';
import { WorkState } from '../panels/WorkState';
import { Wide } from '../result/Wide';
import { WarningBox } from '../shell/Notices';
import { ModelChoice, model } from './ModelChoice';

/** Inputs of the launcher that nobody measured, told from the shots that count. */
export function FitSection() {
  const { notebook } = useDesk().session;
  const { fit } = notebook;
  const work = fit.state.value;
  return (
    <section class="stack" aria-labelledby="fit-title">
      <h3 id="fit-title">{t('notebook.fit.title')}</h3>
      <div class="notebook-choice">
        <fieldset class="stack notebook-free">
          <legend>{t('notebook.fit.free')}</legend>
          {FREE_INPUTS.map((key) => (
            <label class="option" key={key}>
              <input
                type="checkbox"
                checked={fit.free.value.includes(key)}
                onChange={(event) => fit.setFree(key, event.currentTarget.checked)}
              />
              {t(`notebook.fit.input.${key}`)}
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
          {t('notebook.fit.leads')}
        </label>
        <button
          type="button"
          disabled={work.kind === 'running' || fit.free.value.length === 0}
          onClick={() => void fit.run(model.value, NOTEBOOK_COVERAGE)}
        >
          {t('notebook.fit.run')}
        </button>
      </div>
      {fit.isStale.value && (
        <p class="stale-word" role="status">
          {t('notebook.fit.stale')}
        </p>
      )}
      <WorkState work={work} doing={t('notebook.fit.running')} onCancel={fit.cancel}>
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
  return showAs(`${both}${parts.exponent} ${unit}`.trim());
};

function Found({ found: { fit, model: name, shots, leftOut } }: { readonly found: FoundFit }) {
  const { parameters, correlations, birgeRatio, dof, chiSquare, probability, pulls } = fit;
  // One alone has nothing to be correlated with.
  const correlated = parameters.length > 1 ? parameters : [];
  return (
    <>
      <Wide name={t('notebook.fit.name')}>
        <table>
          <caption>
            {t('notebook.fit.caption', {
              model: modelTitle(name),
              number: showCount(shots),
              coverage: showPercent(NOTEBOOK_COVERAGE),
            })}
          </caption>
          <thead>
            <tr>
              <th scope="col">{t('notebook.fit.inputs')}</th>
              <th scope="col" class="number">
                {t('notebook.fit.fitted')}
              </th>
              <th scope="col" class="number">
                {t('notebook.fit.off')}
              </th>
              {correlated.map(({ key, source }) => (
                <th key={key} scope="col" class="number">
                  {t('notebook.fit.correlation', { source })}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {parameters.map(({ key, source, unit, shift, value }, i) => (
              <tr key={key}>
                <th scope="row">{source}</th>
                <td class="number">
                  {value === null ? t('notebook.fit.differs') : shown(value, unit)}
                </td>
                <td class="number">{shown(shift, unit)}</td>
                {correlated.map(({ key: other }, j) => (
                  <td key={other} class="number">
                    {showNumber(correlations[i]?.[j] ?? 0, 2)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
      <p>
        {t(probability >= 0.05 ? 'notebook.fit.explained' : 'notebook.fit.unexplained', {
          chiSquare: showNumber(chiSquare, 3),
          dof: showCount(dof),
          ratio: showNumber(birgeRatio, 3),
        })}
      </p>
      {pulls.length > 0 && (
        <p>
          {t('notebook.fit.held', {
            inputs: showList(
              pulls.map(({ source, inU }) =>
                t('notebook.fit.heldBy', { source, number: showNumber(inU, 2) }),
              ),
            ),
          })}
        </p>
      )}
      {fit.warnings.map((one) => (
        <WarningBox key={one.message} reason={one} />
      ))}
      <p class="muted">
        {leftOut > 0 && t('notebook.fit.leftOut', { count: leftOut, number: showCount(leftOut) })}{' '}
        {t('notebook.fit.what')} {t('models.caution')}
      </p>
    </>
  );
}
