import { reasonOf } from '../../core/reason';
import { t } from '../../text/text';
import { ReasonText } from './Notices';

/** Shown where the tool could not start at all. */
export function StartFault({ error }: { readonly error: unknown }) {
  return (
    <main class="page">
      <h1>{t('shell.start.title')}</h1>
      <ReasonText reason={reasonOf(error)} />
      <p>{t('shell.start.reload')}</p>
    </main>
  );
}
