import { signal } from '@preact/signals';
import { MODEL_ORDER } from '../../app/modelComparison';
import type { GapCloser, ModelName } from '../../app/resultTypes';
import { formatNumber, numberAt, shortNumber } from '../../core/format';
import { BudgetChart } from '../../plots/BudgetChart';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { Wide } from '../result/Wide';
import { speedShown } from '../result/words';
import { MODEL_CARDS } from './words';

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
      <h3 id="gap-title">What would have to be wrong</h3>
      <div class="models-choice">
        <ChoiceField
          label="By the model"
          value={chosen.value}
          choices={MODEL_ORDER.map((value) => ({ value, label: MODEL_CARDS[value].title }))}
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
  if (waiting) return 'Being worked out; the speeds come first.';
  return noSpeed
    ? 'Measure the film first: there is no speed to hold the model against.'
    : 'By this model the ball does not leave, so no gap can be closed.';
}

function Closers({ closers }: { readonly closers: readonly GapCloser[] }) {
  return (
    <Wide name="What would have to be wrong">
      <table>
        <caption>One input at a time, the others as stated; the least far-fetched first</caption>
        <thead>
          <tr>
            <th scope="col">Input</th>
            <th scope="col" class="number">
              Would have to be
            </th>
            <th scope="col" class="number">
              Off by
            </th>
            <th scope="col" class="number">
              In its own uncertainties
            </th>
          </tr>
        </thead>
        <tbody>
          {closers.map(({ key, source, unit, needed }) => (
            <tr key={key}>
              <th scope="row">{source}</th>
              {needed.ok ? (
                <>
                  <td class="number">{withUnit(numberAt(needed.value.value, 4), unit)}</td>
                  <td class="number">{withUnit(signed(needed.value.shift), unit)}</td>
                  <td class="number">
                    {needed.value.inU === null
                      ? 'stated as exact'
                      : formatNumber(needed.value.inU, 2)}
                  </td>
                </>
              ) : (
                <td colSpan={3} class="muted">
                  {needed.reason.message}
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
const signed = (x: number) => (x > 0 ? `+${shortNumber(x, 2)}` : shortNumber(x, 2));
