import { useState } from 'preact/hooks';
import type { BoardsFound } from '../../app/calibration';
import { holdsForFilm, lensOfCalibration } from '../../app/lens';
import { formatNumber } from '../../core/format';
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
    <Fold title="From pictures of a chessboard" opened={boards.state.value.kind !== 'idle'}>
      <p class="muted">
        Film a flat, printed chessboard with the camera set as for the shot, or take some ten
        stills: the board tilted by 20 to 40 degrees this way and that, and into the corners of the
        picture. The shot's film stays open.
      </p>
      <div class="pair">
        <QuantityField
          label="Inner corners across"
          rule={RULES.boardCorners}
          value={columns}
          optional
          placeholder="found"
          onCommit={setColumns}
        />
        <QuantityField
          label="Inner corners down"
          rule={RULES.boardCorners}
          value={rows}
          optional
          placeholder="found"
          onCommit={setRows}
        />
      </div>
      <p class="field-note">
        {half
          ? 'State both counts, or leave both empty.'
          : 'Left empty, they are counted in the pictures.'}
      </p>
      <div class="row">
        <FileChoice
          label="Clip or stills of a chessboard"
          name="boards"
          disabled={running || half}
          onChoose={(files) =>
            void boards.measure(files, columns === null || rows === null ? null : { columns, rows })
          }
        >
          Choose the clip or stills…
        </FileChoice>
      </div>
      <WorkState work={boards.state.value} doing="Looking for boards" onCancel={boards.cancel}>
        {(found) => <Found found={found} />}
      </WorkState>
    </Fold>
  );
}

function Found({ found }: { readonly found: BoardsFound }) {
  const film = useDesk().session.films.film.value?.info;
  const { lens, boards, pictures, info } = found;
  const holds = film === undefined ? null : holdsForFilm(info, film);
  const count = `${boards.length} of ${pictures.length} pictures`;
  return (
    <>
      {lens.ok ? (
        <LensFound
          lens={lensOfCalibration(lens.value)}
          origin={`a chessboard, ${count}`}
          refused={holds === null || holds.ok ? null : holds.reason}
        >
          The board was found in {count}; its corners miss the lens by{' '}
          {formatNumber(lens.value.rms, 2)} px (rms).
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
