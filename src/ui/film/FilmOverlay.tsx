import type { ImagePoint, ImageRect } from '../../core/units';
import { t } from '../../text/text';
import { CalibrationMarks } from './CalibrationMarks';
import { Cased } from './Cased';
import { ellipseOf, markPaths, placesOf, seedMark, thinned } from './marks';
import type { FilmLength, FilmMuzzle, FilmOverlays } from './props';
import { type FilmTransform, type Size, toViewport } from './view';

interface FilmOverlayProps {
  readonly overlays: FilmOverlays;
  readonly view: FilmTransform;
  readonly viewport: Size;
  readonly currentFrame: number;
  readonly ellipseFactor: number;
  /** Length of the arrow along the direction of travel, CSS px. */
  readonly arrow: number;
}

/** Everything drawn over the film, in the viewport's CSS pixels. Each line has a dark casing: film is any grey. */
export function FilmOverlay(props: FilmOverlayProps) {
  const { overlays, view, viewport, currentFrame } = props;
  const others = overlays.positions.filter((position) => position.frame !== currentFrame);
  const marks = markPaths(thinned(placesOf(others, view)));
  const path = (overlays.path ?? []).map((point) => toViewport(view, point).join(' '));
  return (
    <svg class="film-overlay" width={viewport.width} height={viewport.height} aria-hidden="true">
      <CalibrationMarks overlays={overlays} view={view} viewport={viewport} />
      <Region which="flight" region={overlays.flightRegion} view={view} />
      <Region which="seal" region={overlays.sealRegion} view={view} />
      {overlays.muzzle !== null && (
        <Muzzle muzzle={overlays.muzzle} view={view} viewport={viewport} arrow={props.arrow} />
      )}
      {path.length > 1 && <Cased class="film-path" d={`M${path.join('L')}`} />}
      <Cased class="film-mark-refused" d={marks.refused} />
      <Cased class="film-mark-manual" d={marks.manual} />
      <Cased class="film-mark-used" d={marks.used} />
      <Cased
        class="film-seed"
        d={overlays.seeds
          .map((seed) => seedMark(toViewport(view, seed.at), seed.frame === currentFrame))
          .join('')}
      />
      <Current {...props} />
      {overlays.lengths.map((length, index) => (
        <Length key={index} length={length} view={view} viewport={viewport} />
      ))}
    </svg>
  );
}

interface RegionProps {
  readonly which: 'flight' | 'seal';
  readonly region: ImageRect | null;
  readonly view: FilmTransform;
}

/** The middle of the nearest CSS pixel, where a thin line is sharp. */
const crisp = (place: number) => Math.floor(place) + 0.5;

function Region({ which, region, view }: RegionProps) {
  if (region === null) return null;
  const [x, y, width, height] = region;
  const start = toViewport(view, [x - 0.5, y - 0.5]);
  const end = toViewport(view, [x + width - 0.5, y + height - 0.5]);
  const left = crisp(start[0]);
  const top = crisp(start[1]);
  const right = crisp(end[0]);
  const bottom = crisp(end[1]);
  return (
    <>
      <Cased class={`film-region-${which}`} d={`M${left} ${top}H${right}V${bottom}H${left}Z`} />
      {/* The seal's region lies within the flight's: one label inside its edge, the other below. */}
      <text
        class="film-label"
        x={Math.max(left, 0) + 5}
        y={which === 'flight' ? Math.max(top, 0) + 14 : bottom + 13}
      >
        {t(`film.mark.${which}`)}
      </text>
    </>
  );
}

interface LengthProps {
  readonly length: FilmLength;
  readonly view: FilmTransform;
  readonly viewport: Size;
}

/** Half the width of a length's end stroke, CSS px. */
const END_STROKE = 11;
/** Clear middle around an end, so that the mark under it stays visible, CSS px. */
const END_GAP = 5;

function Length({ length, view, viewport }: LengthProps) {
  const [x1, y1] = toViewport(view, length.from);
  const [x2, y2] = toViewport(view, length.to);
  const size = Math.hypot(x2 - x1, y2 - y1);
  const [ux, uy] = size === 0 ? [1, 0] : [(x2 - x1) / size, (y2 - y1) / size];
  const end = (x: number, y: number) =>
    [-1, 1]
      .map((side) => {
        const near = side * END_GAP;
        const far = side * END_STROKE;
        return `M${x - uy * near} ${y + ux * near}L${x - uy * far} ${y + ux * far}`;
      })
      .join('');
  const gap = Math.min(END_GAP, size / 2);
  const line = `M${x1 + ux * gap} ${y1 + uy * gap}L${x2 - ux * gap} ${y2 - uy * gap}`;
  const [left, top] = labelPlace((x1 + x2) / 2, (y1 + y2) / 2, Math.abs(uy), viewport);
  return (
    <>
      <Cased class="film-length" d={line + end(x1, y1) + end(x2, y2)} />
      <text class="film-label film-label-middle" x={left} y={top}>
        {length.label}
      </text>
    </>
  );
}

/** Above a level line, beside an upright one, and inside the viewport. */
function labelPlace(x: number, y: number, steepness: number, viewport: Size) {
  const left = steepness > 0.7 ? x + 40 : x;
  const top = y - 9 < 14 ? y + 20 : y - 9;
  return [
    Math.min(Math.max(left, 40), viewport.width - 40),
    Math.min(Math.max(top, 14), viewport.height - 6),
  ] as const;
}

interface MuzzleProps {
  readonly muzzle: FilmMuzzle;
  readonly view: FilmTransform;
  readonly viewport: Size;
  readonly arrow: number;
}

const ARROW_HEAD = 8;

function Muzzle({ muzzle, view, viewport, arrow }: MuzzleProps) {
  const [x, y] = toViewport(view, muzzle.point);
  const [ax, ay] = muzzle.axis ?? [1, 0];
  const far = viewport.width + viewport.height;
  const plane = `M${x + ay * far} ${y - ax * far}L${x - ay * far} ${y + ax * far}`;
  const tip: ImagePoint = [x + ax * arrow, y + ay * arrow];
  const barb = (side: number) =>
    `M${tip[0] - ARROW_HEAD * (ax - side * ay * 0.6)} ${tip[1] - ARROW_HEAD * (ay + side * ax * 0.6)}L${tip[0]} ${tip[1]}`;
  const shaft = `M${x + ax * END_STROKE} ${y + ay * END_STROKE}L${tip[0]} ${tip[1]}`;
  return (
    <>
      <Cased class="film-muzzle" d={plane} />
      <Cased
        class={muzzle.axis === null ? 'film-axis film-axis-open' : 'film-axis'}
        d={shaft + barb(1) + barb(-1)}
      />
    </>
  );
}

/** The current frame's centre: a larger mark, the ball's outline and the enlarged uncertainty ellipse. */
function Current({ overlays, view, currentFrame, ellipseFactor }: FilmOverlayProps) {
  const position = overlays.positions.find((candidate) => candidate.frame === currentFrame);
  if (position === undefined) return null;
  const { x, y, ux, uy, cov, used } = position;
  if (x === null || y === null) return null;
  const [left, top] = toViewport(view, [x, y]);
  const kind = used ? 'used' : 'refused';
  const enlarged = ellipseFactor * view.scale;
  const ellipse = ux === null || uy === null || cov === null ? null : ellipseOf(ux, uy, cov);
  // The cross leaves the ellipse, or a small middle, clear.
  const gap = ellipse === null ? 2 : ellipse.major * enlarged + 2;
  const arm = 6;
  return (
    <>
      {overlays.ballRadius !== null && (
        <g class={`film-ball film-ball-${kind}`}>
          <circle class="cased" cx={left} cy={top} r={overlays.ballRadius * view.scale} />
          <circle class="line" cx={left} cy={top} r={overlays.ballRadius * view.scale} />
        </g>
      )}
      {ellipse !== null && (
        <ellipse
          class={`film-ellipse film-ellipse-${kind}`}
          rx={ellipse.major * enlarged}
          ry={ellipse.minor * enlarged}
          transform={`translate(${left} ${top}) rotate(${(ellipse.angle * 180) / Math.PI})`}
        />
      )}
      <Cased
        class={`film-current film-current-${kind}`}
        d={
          used
            ? [-1, 1]
                .map(
                  (side) =>
                    `M${left + side * gap} ${top}h${side * arm}M${left} ${top + side * gap}v${side * arm}`,
                )
                .join('')
            : `M${left - 6} ${top - 6}l12 12m0 -12l-12 12`
        }
      />
    </>
  );
}
