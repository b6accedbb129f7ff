import { MODEL_ORDER, type ModelView } from '../../app/modelComparison';
import type { Agreement, ModelName } from '../../app/resultTypes';
import { expanded, type Quantity } from '../../core/estimate';
import type { Outcome } from '../../core/reason';
import type { UnitKind } from '../../core/unitTable';
import { showFixed, showNumber, showPercent, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { Wide } from '../result/Wide';
import { ReasonText, WarningBox } from '../shell/Notices';
import { modelTitle } from './words';

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
          {t(`models.comparison.meaning.${agreement.value.verdict}`, {
            zeta: showFixed(Math.abs(agreement.value.zeta), 1),
          })}{' '}
          <span class="muted">({modelTitle('gasDynamics')})</span>
        </p>
      )}
      {measured.speed === null && <p class="muted">{t('models.comparison.noSpeed')}</p>}
      <Comparison
        title={t('models.comparison.speed')}
        measured={measured.speed}
        kind="speed"
        unit={unit}
        coverage={coverage}
        rows={rowsOf(views, ({ speed, speedAgreement }) => [speed.quantity, speedAgreement])}
      />
      <Comparison
        title={t('models.comparison.lead')}
        measured={measured.lead}
        kind="time"
        unit="ms"
        coverage={coverage}
        rows={rowsOf(views, ({ lead, leadAgreement }) => [lead.quantity, leadAgreement])}
      />
      <p class="muted">{t('models.comparison.what')}</p>
      {warnings.map(({ name, one }) => (
        <WarningBox
          key={`${name}${one.code}${one.message}`}
          reason={one}
          say={(message) => t('models.comparison.ofModel', { model: modelTitle(name), message })}
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
  const show = (one: Quantity) => showQuantity(expanded(one), kind, unit);
  return (
    <Wide name={title}>
      <table class="comparison">
        <caption>
          {t('models.comparison.caption', { title, coverage: showPercent(coverage) })}
        </caption>
        <thead>
          <tr>
            <th scope="col">{t('models.comparison.from')}</th>
            <th scope="col" class="number">
              {title}
            </th>
            <th scope="col" class="number">
              {t('models.comparison.difference')}
            </th>
            <th scope="col" class="number">
              ζ
            </th>
            <th scope="col" class="number">
              {t('models.comparison.en')}
            </th>
            <th scope="col">{t('models.comparison.filmAndModel')}</th>
          </tr>
        </thead>
        <tbody>
          <tr class="comparison-film">
            <th scope="row">{t('models.comparison.film')}</th>
            <td class="number">
              {measured === null ? t('models.comparison.notMeasured') : show(measured)}
            </td>
            <td colSpan={4} />
          </tr>
          {rows.map(({ name, told }) => (
            <tr key={name} data-model={name}>
              <th scope="row">{modelTitle(name)}</th>
              {told === null ? (
                <td colSpan={5} class="muted">
                  {t('models.comparison.waiting')}
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
      <td class="number">{showNumber(zeta, 2)}</td>
      <td class="number">{showNumber(en, 2)}</td>
      <td class={`verdict verdict-${verdict}`}>{t(`models.comparison.verdict.${verdict}`)}</td>
    </>
  );
}
