import { t } from '../../text/text';
import { useDesk } from '../desk';

/**
 * What is commonly asked of anyone near such a launcher (common practice, no source). Local rules and the
 * person in charge come first.
 */
export const cautionLines = (): readonly string[] => [
  t('shell.cautions.line'),
  t('shell.cautions.eyes'),
  t('shell.cautions.catcher'),
  t('shell.cautions.tube'),
  t('shell.cautions.mount'),
  t('shell.cautions.count'),
];

/** The usual cautions of such a launcher, shown before a shot's numbers. */
export function Cautions() {
  const desk = useDesk();
  if (!desk.cautionsOpen.value) return null;
  const wide = window.matchMedia('(min-width: 761px)').matches;
  return (
    <aside class="cautions" aria-label={t('shell.header.cautions')}>
      <details open={wide}>
        <summary>{t('shell.cautions.title')}</summary>
        <ul>
          {cautionLines().map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <div class="row">
          <p>{t('shell.cautions.defer')}</p>
          <button
            type="button"
            onClick={() => {
              desk.cautionsOpen.value = false;
            }}
          >
            {t('shell.cautions.close')}
          </button>
        </div>
      </details>
    </aside>
  );
}
