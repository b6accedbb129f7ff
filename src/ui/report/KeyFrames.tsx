import { useMemo } from 'preact/hooks';
import { greyRange } from '../../app/greyRange';
import type { KeyFrame } from '../../app/keyFrames';
import type { GreyFrame } from '../../core/frame';
import type { ImageRect } from '../../core/units';
import { t } from '../../text/text';
import { cropped } from '../frames/planes';
import { pictureUrl } from './pictureUrl';

/** A key frame with its pixels. */
export interface LoadedFrame extends KeyFrame {
  readonly picture: GreyFrame;
}

interface KeyFramesProps {
  readonly frames: readonly LoadedFrame[];
  /** The part of the frames that is shown. */
  readonly rect: ImageRect;
  /** The muzzle plane: a point on it and the direction of travel. */
  readonly muzzle: {
    readonly point: readonly [number, number];
    readonly axis: readonly [number, number];
  } | null;
}

/** The film around the muzzle at burst and exit, with ball and muzzle plane drawn over it. */
export function KeyFrames({ frames, rect, muzzle }: KeyFramesProps) {
  return (
    <div class="key-frames">
      {frames.map((frame) => (
        <figure key={frame.kind} class="key-frame">
          <KeyPicture frame={frame} rect={rect} muzzle={muzzle} />
          <figcaption>
            {t('report.pictures.caption', { frame: `${frame.frame}`, kind: frame.kind })}
          </figcaption>
        </figure>
      ))}
    </div>
  );
}

function KeyPicture(props: Omit<KeyFramesProps, 'frames'> & { readonly frame: LoadedFrame }) {
  const { frame, rect, muzzle } = props;
  const { picture, ball, kind } = frame;
  const [x, y, width, height] = rect;
  const url = useMemo(() => {
    const part = cropped(picture, [x, y, width, height]);
    return pictureUrl(part, greyRange(part));
  }, [picture, x, y, width, height]);
  const reach = width + height;
  return (
    <svg
      class="film-picture"
      viewBox={`${x - 0.5} ${y - 0.5} ${width} ${height}`}
      role="img"
      aria-label={t('report.pictures.muzzle', { frame: `${frame.frame}`, kind })}
    >
      <image href={url} x={x - 0.5} y={y - 0.5} width={width} height={height} />
      {muzzle !== null && (
        <path
          class="picture-muzzle"
          vector-effect="non-scaling-stroke"
          d={planePath(muzzle.point, muzzle.axis, reach)}
        />
      )}
      {ball !== null && (
        <circle
          class="picture-ball"
          vector-effect="non-scaling-stroke"
          cx={ball.centre[0]}
          cy={ball.centre[1]}
          r={ball.radius}
        />
      )}
    </svg>
  );
}

/** A line across the direction of travel. */
const planePath = (
  [x, y]: readonly [number, number],
  [ax, ay]: readonly [number, number],
  reach: number,
): string => `M${x + ay * reach} ${y - ax * reach}L${x - ay * reach} ${y + ax * reach}`;
