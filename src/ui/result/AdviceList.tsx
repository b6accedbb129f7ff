import type { Result } from '../../app/resultTypes';
import { t } from '../../text/text';

/** The inputs that cost the exit velocity most, and what would make each better known. */
export function AdviceList({ advice }: { readonly advice: Result['budget']['advice'] }) {
  if (advice.length === 0) return null;
  return (
    <section class="advice" aria-label={t('result.advice')}>
      <h3>{t('result.advice')}</h3>
      <ol>
        {advice.map(({ source, share, message }) => (
          <li key={source}>
            <strong>
              {Math.round(share * 100)}
              {'\u00a0'}% {source}
            </strong>
            <span>{message}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}
