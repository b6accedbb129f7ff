import { useState } from 'preact/hooks';
import type { BoardsFound } from '../../app/calibration';
import { holdsForFilm, lensOfCalibration } from '../../app/lens';
import { showCount, showNumber } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { ReasonText } from '../shell/Notices';
import { BoardPictures } from './BoardPictures';
import { FileChoice } from './FileChoice';
import { LensFound } from './LensFound';
import { Fold } from './Panel';
import { WorkState } from './WorkState';

/** The lens from a clip or stills of a chessboard. */
export function LensFromBoards() {
  const { boards } = useDesk().session.calibration;
  const [columns, setColumns] = useState<number | null>(null);
  const [rows, setRows] = useState<number | null>(null);
  const half = (columns === null) !== (rows === null);
  const running = boards.state.value.kind === 'running';
  return (
    <Fold title={t('panels.lens.boards.title')} opened={boards.state.value.kind !== 'idle'}>
      <p class="muted">{t('panels.lens.boards.how')}</p>
      <div class="pair">
        <QuantityField
          label={t('panels.lens.boards.across')}
          rule={RULES.boardCorners}
          value={columns}
          optional
          placeholder={t('panels.lens.boards.found')}
          onCommit={setColumns}
        />
        <QuantityField
          label={t('panels.lens.boards.down')}
          rule={RULES.boardCorners}
          value={rows}
          optional
          placeholder={t('panels.lens.boards.found')}
          onCommit={setRows}
        />
      </div>
      <p class="field-note">{t(half ? 'panels.lens.boards.both' : 'panels.lens.boards.counted')}</p>
      <div class="row">
        <FileChoice
          label={t('panels.lens.boards.files')}
          name="boards"
          disabled={running || half}
          onChoose={(files) =>
            void boards.measure(files, columns === null || rows === null ? null : { columns, rows })
          }
        >
          {t('panels.lens.boards.choose')}
        </FileChoice>
      </div>
      <WorkState
        work={boards.state.value}
        doing={t('panels.lens.boards.doing')}
        onCancel={boards.cancel}
      >
        {(found) => <Found found={found} />}
      </WorkState>
    </Fold>
  );
}

function Found({ found }: { readonly found: BoardsFound }) {
  const film = useDesk().session.films.film.value?.info;
  const { lens, boards, pictures, info } = found;
  const holds = film === undefined ? null : holdsForFilm(info, film);
  const counts = () => ({
    found: showCount(boards.length),
    pictures: showCount(pictures.length),
  });
  return (
    <>
      {lens.ok ? (
        <LensFound
          lens={lensOfCalibration(lens.value)}
          origin={() => t('panels.lens.boards.origin', counts())}
          refused={holds === null || holds.ok ? null : holds.reason}
        >
          {t('panels.lens.boards.agree', { ...counts(), rms: showNumber(lens.value.rms, 2) })}
        </LensFound>
      ) : (
        <div class="notice notice-problem" role="alert" data-code={lens.reason.code}>
          <ReasonText reason={lens.reason} />
        </div>
      )}
      {pictures.length > 0 && <BoardPictures found={found} />}
    </>
  );
}
