import { render, type VNode } from 'preact';
import { startPage } from './app/startPage';
import { App } from './ui/App';
import { createDesk } from './ui/desk';
import { showView, viewOf } from './ui/deskView';
import { StartFault } from './ui/shell/StartFault';

const root = document.getElementById('app');
if (root !== null) {
  const show = (page: VNode) => {
    root.replaceChildren();
    render(page, root);
  };
  startPage().then(
    ({ session, keeping, preferences }) => {
      const desk = createDesk(session, preferences);
      showView(desk, keeping.left.view);
      keeping.follow(session, () => viewOf(desk));
      show(<App desk={desk} />);
    },
    (error: unknown) => show(<StartFault error={error} />),
  );
}
