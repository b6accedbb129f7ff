import { render, type VNode } from 'preact';
import { startPage } from './app/startPage';
import { App } from './ui/App';
import { createDesk } from './ui/desk';
import { StartFault } from './ui/shell/StartFault';

const root = document.getElementById('app');
if (root !== null) {
  const show = (page: VNode) => {
    root.replaceChildren();
    render(page, root);
  };
  startPage().then(
    ({ session, preferences }) => show(<App desk={createDesk(session, preferences)} />),
    (error: unknown) => show(<StartFault error={error} />),
  );
}
