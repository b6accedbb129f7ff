import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import { droppedFiles } from '../app/footageFiles';
import { language } from '../text/text';
import { type Desk, DeskContext } from './desk';
import { FramesSection } from './frames/FramesSection';
import { MistakesView } from './mistakes/MistakesView';
import { ModelsView } from './models/ModelsView';
import { NotebookView } from './notebook/NotebookView';
import { PlanView } from './plan/PlanView';
import { ReportView } from './report/ReportView';
import { Evidence } from './result/Evidence';
import { Cautions } from './shell/Cautions';
import { FirstLook } from './shell/FirstLook';
import { Header } from './shell/Header';
import { Help } from './shell/Help';
import { handleKey } from './shell/keys';
import { NewVersion } from './shell/NewVersion';
import { SideSheet } from './shell/SideSheet';
import { StepBar } from './shell/StepBar';
import { FilmStage } from './stage/FilmStage';
import { FrameControls } from './stage/FrameControls';
import { StreakStage } from './stage/StreakStage';
import './tokens.css';
import './base.css';
import './fields/fields.css';
import './shell/shell.css';
import './panels/panels.css';
import './reading/reading.css';
import './result/result.css';
import './models/models.css';
import './notebook/notebook.css';
import './plan/plan.css';
import './report/report.css';
import './queue/queue.css';
import './explain/explain.css';
import './mistakes/mistakes.css';

/** The one window: a shot, its report, the notebook of many, the plan of the next, or usual mistakes. */
export function App({ desk }: { readonly desk: Desk }) {
  const over = useDrop(desk);
  useKeys(desk);
  useTheme(desk);
  useDocumentLanguage();
  useLeaveQuestion(desk);
  return (
    <DeskContext.Provider value={desk}>
      <div class={`page ${over ? 'page-drop' : ''}`}>
        <Header />
        <NewVersion />
        <Cautions />
        <Help />
        <Place desk={desk} />
      </div>
    </DeskContext.Provider>
  );
}

function Place({ desk }: { readonly desk: Desk }) {
  switch (desk.place.value) {
    case 'shot':
      return <ShotBench desk={desk} />;
    case 'report':
      return <ReportView />;
    case 'notebook':
      return <NotebookView />;
    case 'plan':
      return <PlanView />;
    case 'mistakes':
      return <MistakesView />;
  }
}

/** Steps along the top, film and streak image, the step's sheet beside them. */
function ShotBench({ desk }: { readonly desk: Desk }) {
  return (
    <>
      <FirstLook />
      <StepBar />
      <div class={`bench ${desk.preferences.sheetOpen.value ? '' : 'bench-folded'}`}>
        <main class="stage">
          {desk.step.value === 'models' ? (
            <ModelsView />
          ) : (
            <>
              <FilmStage />
              <StreakStage />
              <FrameControls />
              <FramesSection />
              <Evidence />
            </>
          )}
        </main>
        <SideSheet />
      </div>
    </>
  );
}

/** The browser asks before it leaves a queue that runs: clips still to be measured are not kept. */
function useLeaveQuestion({ session: { queue } }: Desk): void {
  useEffect(() => {
    const ask = (event: BeforeUnloadEvent) => {
      if (queue.running.value) event.preventDefault();
    };
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [queue]);
}

/** Heard from the first moment the page stands: an effect after the paint could miss a key. */
function useKeys(desk: Desk): void {
  useLayoutEffect(() => {
    const onKey = (event: KeyboardEvent) => handleKey(desk, event);
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [desk]);
}

/** Takes files dropped anywhere on the page; true while some are held over it. */
function useDrop(desk: Desk): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const stop = new AbortController();
    const listen = (type: 'dragover' | 'dragleave' | 'drop', act: (event: DragEvent) => void) =>
      window.addEventListener(type, act, { signal: stop.signal });
    listen('dragover', (event) => {
      event.preventDefault();
      setOver(true);
    });
    listen('dragleave', (event) => {
      if (event.relatedTarget === null) setOver(false);
    });
    listen('drop', (event) => {
      event.preventDefault();
      setOver(false);
      if (event.dataTransfer !== null) void takeDrop(desk, event.dataTransfer);
    });
    return () => stop.abort();
  }, [desk]);
  return over;
}

const TEXT_FILE = /\.(json|csv)$/i;

async function takeDrop(desk: Desk, transfer: DataTransfer): Promise<void> {
  const { notebook, notices } = desk.session;
  const intoNotebook = desk.place.value === 'notebook';
  try {
    if (intoNotebook) {
      const files = await droppedFiles(transfer);
      // Films alone are to be measured; beside shot files they are those shots' own.
      if (files.some(({ name }) => TEXT_FILE.test(name))) await notebook.add(files);
      else desk.session.queue.add(files);
      return;
    }
    desk.place.value = 'shot';
    desk.step.value = 'footage';
    await desk.session.openFiles(await droppedFiles(transfer));
  } catch (error) {
    // A person is told where it was dropped.
    if (intoNotebook) notebook.report('dropped files', error);
    else notices.report('footage', error);
  }
}

/** Screen readers pronounce the page, and browsers hyphenate it, by this. */
function useDocumentLanguage(): void {
  const now = language.value;
  useLayoutEffect(() => {
    document.documentElement.lang = now;
  }, [now]);
}

function useTheme(desk: Desk): void {
  const chosen = desk.preferences.theme.value;
  useEffect(() => {
    const dark = window.matchMedia('(prefers-color-scheme: dark)');
    const apply = () => {
      const resolved = chosen === 'system' ? (dark.matches ? 'dark' : 'light') : chosen;
      document.documentElement.dataset.theme = resolved;
    };
    apply();
    dark.addEventListener('change', apply);
    return () => dark.removeEventListener('change', apply);
  }, [chosen]);
}
