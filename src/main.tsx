import { render, type VNode } from 'preact';
import { keepProgram, NO_OFFLINE } from './app/offline';
import { startPage } from './app/startPage';
import { languageFor } from './text/language';
import { speak } from './text/text';
import { App } from './ui/App';
import { createDesk } from './ui/desk';
import { showView, viewOf } from './ui/deskView';
import { StartFault } from './ui/shell/StartFault';

/** Only a build has files that can be kept. */
const startOffline = () =>
  import.meta.env.PROD
    ? keepProgram(navigator.serviceWorker, new URL('service-worker.js', document.baseURI), () =>
        location.reload(),
      )
    : NO_OFFLINE;

const root = document.getElementById('app');
if (root !== null) {
  const show = (page: VNode) => {
    root.replaceChildren();
    render(page, root);
  };
  startPage()
    .then(async ({ session, keeping, preferences, started }) => {
      const { value: chosen } = preferences.language;
      // Where it cannot be fetched the page is in English.
      await speak(languageFor(chosen === null ? navigator.languages : [chosen])).catch(() => {});
      const desk = createDesk(session, preferences, startOffline());
      showView(desk, keeping.left.view);
      keeping.follow(session, () => viewOf(desk));
      show(<App desk={desk} />);
      await started;
    })
    .catch((error: unknown) => show(<StartFault error={error} />));
}
