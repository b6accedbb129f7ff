import type { ImagePoint } from '../../core/units';
import { t } from '../../text/text';
import { Cased } from './Cased';
import { type FilmOverlays, PLANE_CORNERS } from './props';
import { type FilmTransform, type Size, toViewport } from './view';

interface CalibrationMarksProps {
  readonly overlays: Pick<FilmOverlays, 'edges' | 'plane' | 'grid'>;
  readonly view: FilmTransform;
  readonly viewport: Size;
}

/** What lens and plane are told by: the grid of the flight plane, its rectangle's corners, straight edges. */
export function CalibrationMarks({ overlays, view, viewport }: CalibrationMarksProps) {
  const { edges, plane, grid } = overlays;
  return (
    <>
      {grid !== null && (
        <Cased class="film-grid" d={grid.map((line) => polyline(line, view)).join('')} />
      )}
      {plane !== null && <Plane corners={plane.corners} view={view} viewport={viewport} />}
      {edges.map(([from, to], index) => (
        <Edge key={index} index={index} ends={[toViewport(view, from), toViewport(view, to)]} />
      ))}
    </>
  );
}

const polyline = (line: readonly ImagePoint[], view: FilmTransform): string =>
  `M${line
    .map((point) =>
      toViewport(view, point)
        .map((place) => place.toFixed(1))
        .join(' '),
    )
    .join('L')}`;

/** Clear middle around a corner or end, so that the mark under it stays visible; length of its strokes; CSS px. */
const GAP = 5;
const STROKE = 16;

/** On a shorter side than this the names of two corners would run into one another, CSS px. */
const ROOM_FOR_NAMES = 200;

type Place = readonly [left: number, top: number];

/** The stretch from `a` towards `b` between two distances from `a`. */
function stretch([x, y]: Place, [bx, by]: Place, from: number, to: number): string {
  const size = Math.hypot(bx - x, by - y);
  if (size <= from) return '';
  const [ux, uy] = [(bx - x) / size, (by - y) / size];
  const end = Math.min(to, size);
  return `M${x + ux * from} ${y + uy * from}L${x + ux * end} ${y + uy * end}`;
}

function Plane(props: {
  readonly corners: readonly ImagePoint[];
  readonly view: FilmTransform;
  readonly viewport: Size;
}) {
  const { corners, view, viewport } = props;
  const places = corners.map((corner) => toViewport(view, corner));
  const at = (i: number) => places[(i + places.length) % places.length] as Place;
  const sides = places.map((place, i) => stretch(place, at(i + 1), STROKE, Infinity)).join('');
  const brackets = places
    .flatMap((place, i) => [at(i - 1), at(i + 1)].map((next) => stretch(place, next, GAP, STROKE)))
    .join('');
  const named = places.every((place, i) => {
    const next = at(i + 1);
    // Corners one below the other have their names on different lines.
    return i % 2 === 1 || Math.hypot(next[0] - place[0], next[1] - place[1]) > ROOM_FOR_NAMES;
  });
  return (
    <>
      <Cased class="film-plane-side" d={sides} />
      <Cased class="film-plane" d={brackets} />
      {places.map((place, i) => {
        const corner = PLANE_CORNERS[i];
        const isLeft = i === 0 || i === 3;
        const isTop = i < 2;
        const left = place[0] + (isLeft ? 9 : -9);
        const top = place[1] + (isTop ? 18 : -9);
        return (
          <text
            key={corner}
            class={`film-label ${isLeft ? '' : 'film-label-end'}`}
            x={Math.min(Math.max(left, 4), viewport.width - 4)}
            y={Math.min(Math.max(top, 14), viewport.height - 6)}
          >
            {i + 1} {named && corner !== undefined && t(`film.corner.${corner}`)}
          </text>
        );
      })}
    </>
  );
}

/** Strokes at both ends, and thin dashes between: the edge itself is to be seen. */
function Edge({ index, ends }: { readonly index: number; readonly ends: readonly [Place, Place] }) {
  const [from, to] = ends;
  return (
    <>
      <Cased class="film-edge-between" d={stretch(from, to, STROKE, Infinity)} />
      <Cased
        class="film-edge"
        d={stretch(from, to, GAP, STROKE) + stretch(to, from, GAP, STROKE)}
      />
      <text class="film-label" x={from[0] + 8} y={from[1] < 24 ? from[1] + 20 : from[1] - 9}>
        {t('film.mark.edge', { number: index + 1 })}
      </text>
    </>
  );
}
