import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { BoardsFound } from '../../app/calibration';
import { formatNumber } from '../../core/format';
import { paintFrame } from '../film/picture';
import { Icon } from '../shell/Icon';

/** Every picture that was looked at, small, with the corners found in it or why none were. */
export function BoardPictures({ found }: { readonly found: BoardsFound }) {
  const { pictures, boards, refused, names, lens, info } = found;
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
  const said =
    board === undefined
      ? (why?.message ?? '')
      : `${board.corners.length} corners in ${board.columns} by ${board.rows}${rms === undefined ? '' : `, ${formatNumber(rms, 2)} px off (rms)`}`;
  return (
    <figure class="board">
      <div class="board-picture">
        <Small picture={picture} width={info.width} label={`${names[at]}: ${said}`} />
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
          aria-label="Previous picture"
          disabled={at === 0}
          onClick={() => setChosen(at - 1)}
        >
          <Icon name="previous" />
        </button>
        <figcaption>
          {at + 1} of {pictures.length}, {names[at]}: {said}
        </figcaption>
        <button
          type="button"
          aria-label="Next picture"
          disabled={at === pictures.length - 1}
          onClick={() => setChosen(at + 1)}
        >
          <Icon name="next" />
        </button>
      </div>
      {refused.length > 0 && (
        <p class="field-note">
          No board in{' '}
          {refused
            .map(({ frame }) => names[pictures.findIndex((one) => one.frame.index === frame)])
            .join(', ')}
          . {refused[0]?.reason.remedy}
        </p>
      )}
    </figure>
  );
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
