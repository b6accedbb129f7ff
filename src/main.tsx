import { render } from 'preact';
import { startPage } from './app/startPage';
import { App } from './ui/App';
import { createDesk } from './ui/desk';
import { StartFault } from './ui/shell/StartFault';

const root = document.getElementById('app');
if (root !== null) {
  startPage().then(
    ({ session, preferences }) => {
      render(<App desk={createDesk(session, preferences)} />, root);
    },
    (error: unknown) => render(<StartFault error={error} />, root),
  );
}
