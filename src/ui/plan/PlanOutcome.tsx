import type { Expectation, Judgement } from '../../app/resultTypes';
import { formatNumber, formatQuantity } from '../../core/format';
import { BudgetChart } from '../../plots/BudgetChart';
import { useDesk } from '../desk';
import { Facts, Fold } from '../panels/Panel';
import { AdviceList } from '../result/AdviceList';
import { ReasonText, WarningBox } from '../shell/Notices';
import { TERM_WORDS } from './words';

const METRES_PER_SECOND = { symbol: 'm/s', perSi: 1 };
const percent = (share: number, figures = 2) => `${formatNumber(100 * share, figures)} %`;
const micros = (seconds: number) => `${formatNumber(1e6 * seconds, 2)} µs`;

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
  if (judgement === null) return <p role="status">Working out what to expect…</p>;
  const { checks, told } = judgement;
  return (
    <div class={`stack ${planning.isStale.value ? 'plan-stale' : ''}`} aria-live="polite">
      <h3>What to expect</h3>
      {told.ok ? (
        <Expected judgement={judgement} expected={told.value} />
      ) : (
        <div class="notice notice-problem" role="alert" data-code={told.reason.code}>
          <p>
            <strong>Nothing can be expected of this plan.</strong>
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
        The exit velocity should come out to <strong>± {formatNumber(speedU, 2)} m/s</strong>, that
        is {percent(speedU / speed)} of {formatQuantity({ value: speed, u: 0 }, 'speed', 'm/s')}{' '}
        (one standard uncertainty).
        {largest !== undefined &&
          ` Most of it, ${percent(largest.share)} of the variance, comes from: ${TERM_WORDS[largest.name]}.`}
      </p>
      <p class="muted">
        What one film happens to show scatters: from ± {formatNumber(speedURange[0], 2)} to ±{' '}
        {formatNumber(speedURange[1], 2)} m/s in the films drawn.
      </p>
      <Facts
        facts={[
          ['frames past the muzzle', least === most ? `${least}` : `${least} to ${most}`],
          ['radius of the ball', `${formatNumber(radius, 3)} px`],
          [
            'blur by the ball’s motion',
            `${formatNumber(blur, 2)} px, ${percent(blur / radius)} of the radius`,
          ],
          ['contrast over noise', formatNumber(lighting.contrastToNoise, 2)],
          ['centre, ball in full view', `± ${formatNumber(expected.centreU, 2)} px`],
          ['exit time', `± ${micros(expected.exitTimeU)}`],
          ['opening of the seal', `± ${micros(expected.burstU)}, anywhere within a frame`],
          ['lead of the seal', `± ${micros(expected.leadU)}`],
        ]}
      />
      <table>
        <caption>Where the uncertainty comes from</caption>
        <thead>
          <tr>
            <th scope="col">origin</th>
            <th scope="col">± m/s</th>
            <th scope="col">of the variance</th>
          </tr>
        </thead>
        <tbody>
          {terms.map(({ name, u, share }) => (
            <tr key={name}>
              <th scope="row">{TERM_WORDS[name]}</th>
              <td>{formatNumber(u, 2)}</td>
              <td>{share < 0.005 ? '< 1 %' : percent(share)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Fold title="Every line of the budget">
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
      <caption>Light that an exposure takes</caption>
      <thead>
        <tr>
          <th scope="col">exposure</th>
          <th scope="col">blur</th>
          <th scope="col">times the light of now</th>
        </tr>
      </thead>
      <tbody>
        {lightNeeds.map(({ exposure, blur, blurShare, needed }, i) => (
          <tr key={exposure}>
            <th scope="row">
              {micros(exposure)}
              {i === 0 && ', as planned'}
            </th>
            <td>
              {formatNumber(blur, 2)} px, {percent(blurShare)} of the radius
            </td>
            <td>{formatNumber(needed, 2)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <td colSpan={3} class="muted">
            To keep the picture as bright as the one taken with{' '}
            {micros(plan.picture.light.exposure)}; the plan has{' '}
            {formatNumber(plan.picture.light.factor, 3)} times its light.
          </td>
        </tr>
      </tfoot>
    </table>
  );
}
