import type { Expectation, Judgement } from '../../app/resultTypes';
import { BudgetChart } from '../../plots/BudgetChart';
import { showNumber, showQuantity } from '../../text/show';
import { t, tRich } from '../../text/text';
import { useDesk } from '../desk';
import { Facts } from '../panels/Facts';
import { Fold } from '../panels/Panel';
import { AdviceList } from '../result/AdviceList';
import { ReasonText, WarningBox } from '../shell/Notices';

const METRES_PER_SECOND = { symbol: 'm/s', perSi: 1 };
const percent = (share: number, figures = 2) => `${showNumber(100 * share, figures)} %`;
const micros = (seconds: number) => `${showNumber(1e6 * seconds, 2)} µs`;

const blurWords = (blur: number, share: number) =>
  t('plan.outcome.blurIs', { blur: showNumber(blur, 2), share: percent(share) });

/** What the plan should give, and what stands against it. */
export function PlanOutcome() {
  const { planning } = useDesk().session;
  const judgement = planning.judgement.value;
  const work = planning.judging.value;
  if (work.kind === 'failed') {
    return (
      <div class="notice notice-problem" role="alert" data-code={work.reason.code}>
        <ReasonText reason={work.reason} />
      </div>
    );
  }
  if (judgement === null) return <p role="status">{t('plan.outcome.working')}</p>;
  const { checks, told } = judgement;
  return (
    <div class={`stack ${planning.isStale.value ? 'plan-stale' : ''}`} aria-live="polite">
      <h3>{t('plan.expect')}</h3>
      {told.ok ? (
        <Expected judgement={judgement} expected={told.value} />
      ) : (
        <div class="notice notice-problem" role="alert" data-code={told.reason.code}>
          <p>
            <strong>{t('plan.outcome.nothing')}</strong>
          </p>
          <ReasonText reason={told.reason} />
        </div>
      )}
      {checks
        .filter(({ code }) => told.ok || code !== told.reason.code)
        .map((check) => (
          <WarningBox key={check.code} reason={check} />
        ))}
      <LightTable judgement={judgement} />
    </div>
  );
}

function Expected(props: { readonly judgement: Judgement; readonly expected: Expectation }) {
  const { judgement, expected } = props;
  const { plan, lighting } = judgement;
  const { speedU, speedURange, terms, frames, radius, blur } = expected;
  const speed = plan.speed.value;
  const [largest] = terms;
  const [least, most] = frames;
  return (
    <>
      <p class="plan-statement">
        {tRich('plan.outcome.statement', {
          u: showNumber(speedU, 2),
          share: percent(speedU / speed),
          speed: showQuantity({ value: speed, u: 0 }, 'speed', 'm/s'),
        })}{' '}
        {largest !== undefined &&
          t('plan.outcome.largest', {
            share: percent(largest.share),
            term: t(`plan.terms.${largest.name}`),
          })}
      </p>
      <p class="muted">
        {t('plan.outcome.scatter', {
          low: showNumber(speedURange[0], 2),
          high: showNumber(speedURange[1], 2),
        })}
      </p>
      <Facts
        facts={[
          [
            t('plan.outcome.frames'),
            least === most
              ? `${least}`
              : t('plan.outcome.range', { low: `${least}`, high: `${most}` }),
          ],
          [t('plan.outcome.radius'), `${showNumber(radius, 3)} px`],
          [t('plan.outcome.blur'), blurWords(blur, blur / radius)],
          [t('plan.outcome.contrast'), showNumber(lighting.contrastToNoise, 2)],
          [t('plan.outcome.centre'), `± ${showNumber(expected.centreU, 2)} px`],
          [t('plan.outcome.exitTime'), `± ${micros(expected.exitTimeU)}`],
          [t('plan.outcome.opening'), t('plan.outcome.openingIs', { u: micros(expected.burstU) })],
          [t('plan.outcome.lead'), `± ${micros(expected.leadU)}`],
        ]}
      />
      <table>
        <caption>{t('plan.outcome.origins')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('plan.outcome.origin')}</th>
            <th scope="col" class="plan-figures">
              ± m/s
            </th>
            <th scope="col" class="plan-figures">
              {t('plan.outcome.ofVariance')}
            </th>
          </tr>
        </thead>
        <tbody>
          {terms.map(({ name, u, share }) => (
            <tr key={name}>
              <th scope="row">{t(`plan.terms.${name}`)}</th>
              <td class="number">{showNumber(u, 2)}</td>
              <td class="number">{share < 0.005 ? '< 1 %' : percent(share)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Fold title={t('plan.outcome.budget')}>
        <BudgetChart entries={expected.budget} combined={speedU} unit={METRES_PER_SECOND} />
      </Fold>
      <AdviceList advice={expected.advice} />
    </>
  );
}

/** How much light shorter exposures take. */
function LightTable({ judgement }: { readonly judgement: Judgement }) {
  const { lightNeeds, plan } = judgement;
  return (
    <table>
      <caption>{t('plan.needs.title')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('plan.needs.exposure')}</th>
          <th scope="col">{t('plan.needs.blur')}</th>
          <th scope="col" class="plan-figures">
            {t('plan.needs.times')}
          </th>
        </tr>
      </thead>
      <tbody>
        {lightNeeds.map(({ exposure, blur, blurShare, needed }, i) => (
          <tr key={exposure}>
            <th scope="row">
              {i === 0
                ? t('plan.needs.asPlanned', { exposure: micros(exposure) })
                : micros(exposure)}
            </th>
            <td>{blurWords(blur, blurShare)}</td>
            <td class="number">{showNumber(needed, 2)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <td colSpan={3} class="muted">
            {t('plan.needs.what', {
              exposure: micros(plan.picture.light.exposure),
              factor: showNumber(plan.picture.light.factor, 3),
            })}
          </td>
        </tr>
      </tfoot>
    </table>
  );
}
