import type { Result } from '../../app/resultTypes';
import { isAvailable } from '../../core/estimate';
import {
  formatCount,
  formatInterval,
  formatNumber,
  formatQuantity,
  numberAt,
} from '../../core/format';
import { useDesk } from '../desk';
import { Icon } from '../shell/Icon';
import { ReasonText } from '../shell/Notices';
import { Wide } from './Wide';
import { modelWords, supportWords } from './words';

type Fit = Extract<Result['fit'], { model: string }>;

const VERDICTS = {
  passed: { look: 'check-passed', word: 'passed', icon: 'done' },
  cautious: { look: 'check-cautious', word: 'on the safe side', icon: 'open' },
  failed: { look: 'check-failed', word: 'look at this', icon: 'needsYou' },
} as const;

/** Centres that scatter less than stated only mean that the stated uncertainty is generous. */
function verdictOn({ code, passed }: Fit['checks'][number], fit: Fit): keyof typeof VERDICTS {
  if (passed) return 'passed';
  return code === 'chiSquare' && fit.chiSquare < fit.dof ? 'cautious' : 'failed';
}

/** The fit: its checks, parameters, the models compared, and the Monte Carlo check. */
export function FitTables({ result }: { readonly result: Result }) {
  const { fit } = result;
  if (!('model' in fit)) {
    // The statement gives the same reason where the speed would stand.
    if (!isAvailable(result.exitVelocity)) return null;
    return (
      <div class="notice notice-missing">
        <ReasonText reason={fit.unavailable} />
      </div>
    );
  }
  return (
    <>
      <h3>Fit: {modelWords(fit.model)}</h3>
      <p>
        Chi-square {formatNumber(fit.chiSquare, 4)} for {numberAt(fit.dof, 3)} degrees of freedom.{' '}
        {fit.downWeighted > 0 && (
          <span data-role="down-weighted">
            {formatCount(fit.downWeighted)}{' '}
            {fit.downWeighted === 1
              ? 'centre lies so far off that it counts'
              : 'centres lie so far off that they count'}{' '}
            for less than half.
          </span>
        )}
      </p>
      <ul class="checks">
        {fit.checks.map((check) => {
          const { look, word, icon } = VERDICTS[verdictOn(check, fit)];
          return (
            <li key={`${check.code}${check.message}`} class={look}>
              <Icon name={icon} />
              <span>
                {word}: {check.message}
                {!check.passed && check.remedy !== null && (
                  <span class="remedy"> {check.remedy}</span>
                )}
              </span>
            </li>
          );
        })}
      </ul>
      <ComparedModels result={result} />
      <MonteCarlo result={result} />
    </>
  );
}

function ComparedModels({ result }: { readonly result: Result }) {
  const unit = useDesk().preferences.speedUnit.value;
  if (!('model' in result.fit) || result.fit.compared.length === 0) return null;
  const chosen = result.fit.model;
  return (
    <Wide name="Models compared">
      <table>
        <caption>Models compared</caption>
        <thead>
          <tr>
            <th scope="col">Motion</th>
            <th scope="col" class="number">
              Exit velocity
            </th>
            <th scope="col" class="number">
              Chi-square (dof)
            </th>
            <th scope="col" class="number">
              AICc
            </th>
            <th scope="col" class="number">
              Weight
            </th>
            <th scope="col">Support</th>
          </tr>
        </thead>
        <tbody>
          {result.fit.compared.map((one) => (
            <tr key={one.model}>
              <th scope="row">
                {modelWords(one.model)}
                {one.model === chosen && ' (used)'}
              </th>
              <td class="number">
                {formatQuantity({ value: one.exitVelocity, u: one.u }, 'speed', unit)}
              </td>
              <td class="number">
                {formatNumber(one.chiSquare, 4)} ({one.dof})
              </td>
              <td class="number">{formatNumber(one.aicc, 4)}</td>
              <td class="number">{one.weight.toFixed(2)}</td>
              <td class="support">{supportWords(one.evidenceRatio)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}

function MonteCarlo({ result }: { readonly result: Result }) {
  const unit = useDesk().preferences.speedUnit.value;
  const { monteCarlo } = result;
  if (!('trials' in monteCarlo)) return <ReasonText reason={monteCarlo.unavailable} />;
  return (
    <p>
      Monte Carlo, {formatCount(monteCarlo.trials)} trials:{' '}
      {formatQuantity(monteCarlo, 'speed', unit)}, interval{' '}
      {formatInterval(monteCarlo.interval, monteCarlo.u, 'speed', unit)};{' '}
      {monteCarlo.agrees
        ? 'agrees with the budget.'
        : 'does not agree with the budget, so its interval is the one stated.'}
    </p>
  );
}
