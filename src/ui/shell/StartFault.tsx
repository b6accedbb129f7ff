import { reasonOf } from '../../core/reason';
import { ReasonText } from './Notices';

/** Shown where the tool could not start at all. */
export function StartFault({ error }: { readonly error: unknown }) {
  return (
    <main class="page">
      <h1>exitframe could not start</h1>
      <ReasonText reason={reasonOf(error)} />
      <p>Reload the page; a current version of a common browser is needed.</p>
    </main>
  );
}
