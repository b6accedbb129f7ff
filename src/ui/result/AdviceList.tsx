import type { Result } from '../../app/resultTypes';
import { adviceWords, wholePercent } from '../../report/advice';
import { sourceWords } from '../../text/names';
import { t } from '../../text/text';

/** The inputs that cost the exit velocity most, and what would make each better known. */
export function AdviceList({ advice }: { readonly advice: Result['budget']['advice'] }) {
  if (advice.length === 0) return null;
  return (
    <section class="advice" aria-label={t('result.advice')}>
      <h3>{t('result.advice')}</h3>
      <ol>
        {advice.map(({ source, share }) => (
          <li key={source}>
            <strong>
              {wholePercent(share)} {sourceWords(source)}
            </strong>
            <span>{adviceWords({ source, share })}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}
