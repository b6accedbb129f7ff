import { MODEL_ORDER, type ModelView } from '../../app/modelComparison';
import type { Agreement, ModelName } from '../../app/resultTypes';
import { expanded, type Quantity } from '../../core/estimate';
import { formatNumber, formatQuantity, percent } from '../../core/format';
import type { Outcome } from '../../core/reason';
import type { UnitKind } from '../../core/unitTable';
import { useDesk } from '../desk';
import { Wide } from '../result/Wide';
import { ReasonText, WarningBox } from '../shell/Notices';
import { MODEL_CARDS, VERDICT_WORDS } from './words';

/** Exit speed and lead by the film and by each model, and how far apart they are. */
export function SpeedTable() {
  const desk = useDesk();
  const { models } = desk.session;
  const question = models.asked.value;
  const views = models.views.value;
  if (question === null) return null;
  const unit = desk.preferences.speedUnit.value;
  const { measured, coverage } = question;
  const best = views.gasDynamics.prediction;
  const agreement = best?.ok ? best.value.speedAgreement : null;
  const warnings = MODEL_ORDER.flatMap((name) => {
    const { prediction } = views[name];
    return prediction?.ok ? prediction.value.warnings.map((one) => ({ name, one })) : [];
  });
  return (
    <>
      {agreement?.ok && (
        <p class="headline-2" data-role="model-verdict">
          {agreement.value.meaning} <span class="muted">({MODEL_CARDS.gasDynamics.title})</span>
        </p>
      )}
      {measured.speed === null && (
        <p class="muted">
          The film gives no exit velocity yet, so nothing is held against the models.
        </p>
      )}
      <Comparison
        title="Exit speed"
        measured={measured.speed}
        kind="speed"
        unit={unit}
        coverage={coverage}
        rows={rowsOf(views, ({ speed, speedAgreement }) => [speed.quantity, speedAgreement])}
      />
      <Comparison
        title="Lead of the muzzle seal"
        measured={measured.lead}
        kind="time"
        unit="ms"
        coverage={coverage}
        rows={rowsOf(views, ({ lead, leadAgreement }) => [lead.quantity, leadAgreement])}
      />
      <p class="muted">
        ζ is the difference over its standard uncertainty: up to 2 they agree, from 3 on they
        differ. Eₙ is the difference over its uncertainty expanded for 95 %: beyond 1 they differ.
        The uncertainty of a model is that of its inputs; what it leaves out is not in it. Film and
        model are taken as independent.
      </p>
      {warnings.map(({ name, one }) => (
        <WarningBox
          key={`${name}${one.code}${one.message}`}
          reason={{ ...one, message: `${MODEL_CARDS[name].title}: ${one.message}` }}
        />
      ))}
    </>
  );
}

type Told = readonly [predicted: Quantity, agreement: Outcome<Agreement> | null];
type Prediction = Extract<NonNullable<ModelView['prediction']>, { ok: true }>['value'];

interface Row {
  readonly name: ModelName;
  /** Null: still to come. */
  readonly told: Outcome<Told> | null;
}

const rowsOf = (
  views: Readonly<Record<ModelName, ModelView>>,
  read: (prediction: Prediction) => Told,
): Row[] =>
  MODEL_ORDER.map((name) => {
    const { prediction } = views[name];
    return {
      name,
      told: prediction?.ok ? { ok: true, value: read(prediction.value) } : prediction,
    };
  });

function Comparison(props: {
  readonly title: string;
  readonly measured: Quantity | null;
  readonly kind: UnitKind;
  readonly unit: string;
  readonly coverage: number;
  readonly rows: readonly Row[];
}) {
  const { title, measured, kind, unit, coverage, rows } = props;
  const show = (one: Quantity) => formatQuantity(expanded(one), kind, unit);
  return (
    <Wide name={title}>
      <table class="comparison">
        <caption>
          {title} ({percent(coverage)})
        </caption>
        <thead>
          <tr>
            <th scope="col">From</th>
            <th scope="col" class="number">
              {title}
            </th>
            <th scope="col" class="number">
              Film minus model
            </th>
            <th scope="col" class="number">
              ζ
            </th>
            <th scope="col" class="number">
              Eₙ
            </th>
            <th scope="col">Film and model</th>
          </tr>
        </thead>
        <tbody>
          <tr class="comparison-film">
            <th scope="row">Film</th>
            <td class="number">{measured === null ? 'not measured' : show(measured)}</td>
            <td colSpan={4} />
          </tr>
          {rows.map(({ name, told }) => (
            <tr key={name} data-model={name}>
              <th scope="row">{MODEL_CARDS[name].title}</th>
              {told === null ? (
                <td colSpan={5} class="muted">
                  being worked out
                </td>
              ) : told.ok ? (
                <>
                  <td class="number">{show(told.value[0])}</td>
                  <Against agreement={told.value[1]} show={show} />
                </>
              ) : (
                <td colSpan={5} data-code={told.reason.code}>
                  <ReasonText reason={told.reason} />
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}

function Against(props: {
  readonly agreement: Outcome<Agreement> | null;
  readonly show: (quantity: Quantity) => string;
}) {
  const { agreement, show } = props;
  if (agreement === null) return <td colSpan={4} />;
  if (!agreement.ok) {
    return (
      <td colSpan={4}>
        <ReasonText reason={agreement.reason} />
      </td>
    );
  }
  const { difference, zeta, en, verdict } = agreement.value;
  return (
    <>
      <td class="number">{show(difference)}</td>
      <td class="number">{formatNumber(zeta, 2)}</td>
      <td class="number">{formatNumber(en, 2)}</td>
      <td class={`verdict verdict-${verdict}`}>{VERDICT_WORDS[verdict]}</td>
    </>
  );
}
