import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { BoardsFound } from '../../app/calibration';
import { reasonWords } from '../../text/reasonWords';
import { showList, showNumber } from '../../text/show';
import { t } from '../../text/text';
import { paintFrame } from '../film/picture';
import { Icon } from '../shell/Icon';

/** Every picture that was looked at, small, with the corners found in it or why none were. */
export function BoardPictures({ found }: { readonly found: BoardsFound }) {
  const { pictures, boards, refused, lens, info } = found;
  const firstBoard = pictures.findIndex(({ frame }) => boards[0]?.frame === frame.index);
  const [chosen, setChosen] = useState(Math.max(0, firstBoard));
  const at = Math.min(chosen, pictures.length - 1);
  const picture = pictures[at];
  if (picture === undefined) return null;
  const { index } = picture.frame;
  const place = boards.findIndex(({ frame }) => frame === index);
  const board = boards[place];
  const why = refused.find(({ frame }) => frame === index)?.reason;
  const rms = lens.ok ? lens.value.parts[place]?.rms : undefined;
  const name = nameOf(found, at);
  const said = board === undefined ? why && reasonWords(why).message : boardWords(board, rms);
  return (
    <figure class="board">
      <div class="board-picture">
        <Small
          picture={picture}
          width={info.width}
          label={t('panels.lens.boards.said', { name, said: said ?? '' })}
        />
        <svg viewBox={`-0.5 -0.5 ${info.width} ${info.height}`} aria-hidden="true">
          {board?.corners.map((corner) => (
            <g key={`${corner.column},${corner.row}`}>
              {['cased', 'line'].map((stroke) => (
                <circle
                  key={stroke}
                  class={stroke}
                  cx={corner.at[0]}
                  cy={corner.at[1]}
                  r={info.width / 110}
                />
              ))}
            </g>
          ))}
        </svg>
      </div>
      <div class="board-turn">
        <button
          type="button"
          aria-label={t('panels.lens.boards.previous')}
          disabled={at === 0}
          onClick={() => setChosen(at - 1)}
        >
          <Icon name="previous" />
        </button>
        <figcaption>
          {t('panels.lens.boards.caption', {
            number: at + 1,
            pictures: pictures.length,
            name,
            said: said ?? '',
          })}
        </figcaption>
        <button
          type="button"
          aria-label={t('panels.lens.boards.next')}
          disabled={at === pictures.length - 1}
          onClick={() => setChosen(at + 1)}
        >
          <Icon name="next" />
        </button>
      </div>
      {refused.length > 0 && (
        <p class="field-note">
          {t('panels.lens.boards.none', {
            names: showList(
              refused.map(({ frame }) =>
                nameOf(
                  found,
                  pictures.findIndex((one) => one.frame.index === frame),
                ),
              ),
            ),
          })}{' '}
          {refused[0] && reasonWords(refused[0].reason).remedy}
        </p>
      )}
    </figure>
  );
}

/** A still's file name, or the frame of the clip. */
function nameOf({ names, pictures }: BoardsFound, at: number): string {
  return names[at] ?? t('panels.lens.boards.frame', { frame: pictures[at]?.frame.index ?? at });
}

/** What was found in a picture; `rms` in px, where the lens was found from it. */
function boardWords(board: BoardsFound['boards'][number], rms: number | undefined): string {
  const { columns, rows } = board;
  const corners = board.corners.length;
  return rms === undefined
    ? t('panels.lens.boards.corners', { corners, columns, rows })
    : t('panels.lens.boards.cornersOff', { corners, columns, rows, rms: showNumber(rms, 2) });
}

/** The small copy; what it leaves out at the right and lower border stays bare. */
function Small(props: {
  readonly picture: BoardsFound['pictures'][number];
  readonly width: number;
  readonly label: string;
}) {
  const { frame, by } = props.picture;
  const canvas = useRef<HTMLCanvasElement>(null);
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context === null || context === undefined) return;
    context.canvas.width = frame.width;
    context.canvas.height = frame.height;
    const image = context.createImageData(frame.width, frame.height);
    paintFrame(frame, { low: 0, high: frame.white }, image.data);
    context.putImageData(image, 0, 0);
  }, [frame]);
  return (
    <canvas
      ref={canvas}
      role="img"
      aria-label={props.label}
      style={{ width: `${(100 * by * frame.width) / props.width}%` }}
    />
  );
}
