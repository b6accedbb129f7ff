import { signal } from '@preact/signals';
import type { GapCloser, ModelName } from '../../app/resultTypes';
import { BudgetChart } from '../../plots/BudgetChart';
import { reasonWords } from '../../text/reasonWords';
import { showNumber, showNumberAt, showShortNumber } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { Wide } from '../result/Wide';
import { speedShown } from '../result/words';
import { modelChoices } from './words';

/** The model whose inputs are looked at. */
const chosen = signal<ModelName>('gasDynamics');

/** Which input alone would have to be wrong, and by how much, for a model to give the speed on the film. */
export function GapTable() {
  const desk = useDesk();
  const { models } = desk.session;
  const question = models.asked.value;
  const view = models.views.value[chosen.value];
  if (question === null || view.prediction === null) return null;
  const { prediction, outlook } = view;
  const closers = outlook?.closers ?? null;
  return (
    <section class="stack" aria-labelledby="gap-title">
      <h3 id="gap-title">{t('models.gap.title')}</h3>
      <div class="models-choice">
        <ChoiceField
          label={t('models.gap.byModel')}
          value={chosen.value}
          choices={modelChoices()}
          onChange={(name) => {
            chosen.value = name;
          }}
        />
      </div>
      {closers !== null && closers.length > 0 ? (
        <Closers closers={closers} />
      ) : (
        <p class="muted">{reasonForNone(outlook === null, question.measured.speed === null)}</p>
      )}
      {prediction.ok && prediction.value.speed.budget.length > 0 && (
        <div class="models-budget">
          <BudgetChart
            entries={prediction.value.speed.budget}
            combined={prediction.value.speed.quantity.u}
            unit={speedShown(desk.preferences.speedUnit.value)}
          />
        </div>
      )}
    </section>
  );
}

function reasonForNone(waiting: boolean, noSpeed: boolean): string {
  if (waiting) return t('models.gap.waiting');
  return t(noSpeed ? 'models.gap.noSpeed' : 'models.gap.doesNotLeave');
}

function Closers({ closers }: { readonly closers: readonly GapCloser[] }) {
  return (
    <Wide name={t('models.gap.title')}>
      <table>
        <caption>{t('models.gap.caption')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('models.gap.input')}</th>
            <th scope="col" class="number">
              {t('models.gap.needed')}
            </th>
            <th scope="col" class="number">
              {t('models.gap.off')}
            </th>
            <th scope="col" class="number">
              {t('models.gap.inU')}
            </th>
          </tr>
        </thead>
        <tbody>
          {closers.map(({ key, source, unit, needed }) => (
            <tr key={key}>
              <th scope="row">{source}</th>
              {needed.ok ? (
                <>
                  <td class="number">{withUnit(showNumberAt(needed.value.value, 4), unit)}</td>
                  <td class="number">{withUnit(signed(needed.value.shift), unit)}</td>
                  <td class="number">
                    {needed.value.inU === null
                      ? t('models.gap.exact')
                      : showNumber(needed.value.inU, 2)}
                  </td>
                </>
              ) : (
                <td colSpan={3} class="muted">
                  {reasonWords(needed.reason).message}
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}

const withUnit = (text: string, unit: string) => `${text} ${unit}`.trim();
const signed = (x: number) => (x > 0 ? `+${showShortNumber(x, 2)}` : showShortNumber(x, 2));
