import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { muzzleRect } from '../../app/keyFrames';
import type { Reduction, Shot } from '../../app/resultTypes';
import type { FootageInfo } from '../../core/film';
import {
  type Extent,
  type FigureName,
  type ReportDocument,
  reportDocument,
} from '../../report/document';
import { showDate } from '../../text/show';
import { language, t } from '../../text/text';
import { useDesk } from '../desk';
import { ResultFigure } from '../result/ResultFigure';
import { cautionLines } from '../shell/Cautions';
import { ReasonText } from '../shell/Notices';
import { FigureFiles } from './FigureFiles';
import { FlightPicture } from './FlightPicture';
import { KeyFrames } from './KeyFrames';
import { ReportBar } from './ReportBar';
import { ReportBlocks } from './ReportBlocks';
import { type KeyFrameState, useKeyFrames } from './useKeyFrames';

/** The report of the shot that is open: on the screen as it is printed. */
export function ReportView() {
  const { session } = useDesk();
  const kept = session.measuring.reduction.value === null ? null : session.measuring.kept();
  const info = session.films.film.value?.info ?? null;
  return (
    <main class="report" aria-labelledby="report-title">
      {kept === null || info === null ? <Nothing /> : <Report {...kept} info={info} />}
    </main>
  );
}

function Nothing() {
  const { place } = useDesk();
  return (
    <div class="report-sheet stack">
      <h2 id="report-title">{t('report.title')}</h2>
      <p>{t('report.nothingYet')}</p>
      <div class="row">
        <button
          type="button"
          class="primary"
          onClick={() => {
            place.value = 'shot';
          }}
        >
          {t('report.backToShot')}
        </button>
      </div>
    </div>
  );
}

interface ReportProps {
  readonly shot: Shot;
  readonly reduction: Reduction;
  readonly info: FootageInfo;
}

function Report(props: ReportProps) {
  const { shot, reduction } = props;
  const desk = useDesk();
  const [extent, setExtent] = useState<Extent>('summary');
  const sheet = useRef<HTMLElement>(null);
  const document = useReportDocument(props, extent);
  const keyFrames = useKeyFrames(shot, reduction);
  const flight = desk.session.scenery.flight.state.value;
  const stale = desk.session.measuring.freshness.value !== 'fresh';
  useTitle(document.title);
  return (
    <>
      <ReportBar
        extent={extent}
        onExtent={setExtent}
        document={document}
        reduction={reduction}
        ready={keyFrames.kind !== 'loading' && (extent === 'summary' || flight.kind !== 'running')}
        sheet={sheet}
      />
      {stale && (
        <p class="report-stale stale-word" role="status">
          {t('report.stale')}
        </p>
      )}
      <article ref={sheet} class={`report-sheet report-${extent}`}>
        <ReportBlocks
          document={document}
          figure={(name) => (
            <FigureFiles key={name} name={`${document.title} ${name}`}>
              <ReportFigure name={name} shot={shot} reduction={reduction} keyFrames={keyFrames} />
            </FigureFiles>
          )}
        />
      </article>
    </>
  );
}

function useReportDocument({ shot, reduction, info }: ReportProps, extent: Extent): ReportDocument {
  const { session, preferences } = useDesk();
  const rendered = session.sample.value !== null;
  const speedUnit = preferences.speedUnit.value;
  const spoken = language.value;
  return useMemo(
    () =>
      reportDocument(
        {
          ...{ shot, rendered, speedUnit },
          result: reduction.result,
          drive: reduction.drive,
          footage: info,
          madeOn: showDate(new Date()),
          cautions: [...cautionLines(), t('shell.cautions.defer')],
        },
        extent,
      ),
    // Its sentences are those of the page's language.
    [shot, reduction, info, rendered, speedUnit, extent, spoken],
  );
}

/** A browser proposes the page's title as the name of the PDF. */
function useTitle(title: string): void {
  useEffect(() => {
    const before = document.title;
    document.title = t('report.pageTitle', { shot: title });
    return () => {
      document.title = before;
    };
  }, [title]);
}

function ReportFigure(props: {
  readonly name: FigureName;
  readonly shot: Shot;
  readonly reduction: Reduction;
  readonly keyFrames: KeyFrameState;
}) {
  const { name, shot, reduction, keyFrames } = props;
  const { speedUnit } = useDesk().preferences;
  if (name === 'flight') return <FlightPicture reduction={reduction} />;
  if (name !== 'keyFrames') {
    return (
      <ResultFigure
        name={name}
        reduction={reduction}
        diameter={shot.ball.diameter.value}
        speedUnit={speedUnit.value}
      />
    );
  }
  if (keyFrames.kind === 'loading') return <p class="muted">{t('report.fetching')}</p>;
  if (keyFrames.kind === 'failed') {
    return (
      <div class="notice notice-missing">
        <ReasonText reason={keyFrames.reason} />
      </div>
    );
  }
  const [first] = keyFrames.frames;
  if (first === undefined) return null;
  return (
    <KeyFrames
      frames={keyFrames.frames}
      rect={muzzleRect(reduction.result, shot, first.picture)}
      muzzle={
        shot.muzzle && {
          point: shot.muzzle.point,
          axis: shot.muzzle.axis ?? reduction.result.axis,
        }
      }
    />
  );
}
