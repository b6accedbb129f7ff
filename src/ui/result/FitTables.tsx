import type { Result } from '../../app/resultTypes';
import { isAvailable } from '../../core/estimate';
import {
  checkWords,
  chiSquareWords,
  downWeightedWords,
  monteCarloWords,
  verdictOn,
} from '../../report/fit';
import { modelsCompared } from '../../report/table';
import { modelWords } from '../../text/names';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { Icon } from '../shell/Icon';
import { ReasonText } from '../shell/Notices';
import { ModelTable } from './ModelTable';

const VERDICT_ICONS = { passed: 'done', cautious: 'open', failed: 'needsYou' } as const;

/** The fit: its checks, the models compared, and the Monte Carlo check. */
export function FitTables({ result }: { readonly result: Result }) {
  const unit = useDesk().preferences.speedUnit.value;
  const { fit, monteCarlo } = result;
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
      <h3>{t('result.fit.title', { model: modelWords(fit.model) })}</h3>
      <p>
        {chiSquareWords(fit)}{' '}
        {fit.downWeighted > 0 && <span data-role="down-weighted">{downWeightedWords(fit)}</span>}
      </p>
      <ul class="checks">
        {fit.checks.map((check) => {
          const verdict = verdictOn(check, fit);
          const { message, remedy } = checkWords(check);
          return (
            <li key={`${check.code}${check.message}`} class={`check-${verdict}`}>
              <Icon name={VERDICT_ICONS[verdict]} />
              <span>
                {t('result.fit.check', {
                  verdict: t(`result.fit.verdict.${verdict}`),
                  message,
                })}
                {remedy !== null && <span class="remedy"> {remedy}</span>}
              </span>
            </li>
          );
        })}
      </ul>
      <ModelTable table={modelsCompared(fit, unit)} />
      {'trials' in monteCarlo ? (
        <p>{monteCarloWords(monteCarlo, unit)}</p>
      ) : (
        <ReasonText reason={monteCarlo.unavailable} />
      )}
    </>
  );
}
