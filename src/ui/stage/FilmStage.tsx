import {
  changeLength,
  changePlane,
  changeSeal,
  placeSeed,
  setFlightRegion,
  setMuzzle,
  withCorner,
} from '../../app/edits';
import type { FootageInfo } from '../../core/film';
import { t } from '../../text/text';
import { placeCentre } from '../actions';
import { useDesk } from '../desk';
import { FilmView } from '../film/FilmView';
import { FilmTools, FilmToolsMore, PixelTold } from './FilmTools';
import { calibrationMarks, filmOverlays } from './overlays';

/** The covariance ellipse is drawn this many times its size: a hundredth of a pixel cannot be seen. */
const ELLIPSE_FACTOR = 50;

const sizeWords = ({ name, width, height }: FootageInfo) => ({ name, width, height });

/** The film with everything that is known of it drawn on, and what a hand changes there. */
export function FilmStage() {
  const desk = useDesk();
  const { session } = desk;
  const { player, shots, films } = session;
  const film = films.film.value;
  const draft = shots.draft.value;
  const { look } = desk;
  const frame = look.picture.value;
  const against = look.against.value;
  const flight = look.showing.value === 'flight';
  const opening = films.state.value.kind === 'opening';
  const placeholder = opening ? t('stage.opening') : film === null ? t('stage.dropHere') : '';
  return (
    <FilmView
      frame={frame}
      imageWidth={film?.info.width ?? 1024}
      imageHeight={film?.info.height ?? 256}
      currentFrame={player.current.value}
      contrast={look.greys.value}
      against={against}
      changeReach={look.changeReach.value}
      held={flight ? null : look.held.value}
      magnified={look.magnified.value}
      tools={
        <>
          <FilmTools />
          <FilmToolsMore />
          <PixelTold />
        </>
      }
      view={desk.view}
      largestHeightShare={0.42}
      overlays={{ ...filmOverlays(session), ...calibrationMarks(desk) }}
      ellipseFactor={ELLIPSE_FACTOR}
      mode={desk.mode.value}
      description={
        film === null
          ? t('stage.noFilm')
          : flight
            ? t('stage.flightOf', sizeWords(film.info))
            : t('stage.frameOf', { ...sizeWords(film.info), frame: player.current.value })
      }
      placeholder={placeholder}
      onLengthChange={(index, from, to, settled) => {
        if (!settled) return;
        shots.edit(changeLength(index, { from, to }), {
          label: t('edits.length', { what: 'ends', number: `${index + 1}` }),
          mergeKey: `length-${index}`,
        });
      }}
      onEdgeChange={(index, from, to, settled) => {
        if (settled) session.calibration.edges.move(index, from, to);
      }}
      onPlaneChange={(corner, at, settled) => {
        const plane = draft?.scale.plane ?? null;
        if (!settled || plane === null) return;
        shots.edit(changePlane({ corners: withCorner(plane.corners, corner, at) }), {
          label: t('edits.planeCorner', { number: `${corner + 1}` }),
          mergeKey: `plane-${corner}`,
        });
      }}
      onMuzzleChange={(point, axis, settled) => {
        if (!settled) return;
        const u = draft?.muzzle?.u ?? 0.5;
        shots.edit(setMuzzle({ point, axis, u }), { label: t('edits.muzzle'), mergeKey: 'muzzle' });
      }}
      onPointChange={(at, point, settled) => {
        if (settled) placeCentre(desk, at, point);
      }}
      onSeedChange={(at, point, settled) => {
        if (!settled) return;
        shots.edit(placeSeed(at, point), {
          label: t('edits.seed', { frame: `${at}` }),
          mergeKey: `seed-${at}`,
        });
      }}
      onRegionChange={(which, region, settled) => {
        if (!settled) return;
        const change = which === 'flight' ? setFlightRegion(region) : changeSeal({ region });
        shots.edit(change, { label: t('edits.region', { which }), mergeKey: which });
      }}
      onPixel={(reading) => {
        desk.pixel.value = reading;
      }}
      onSwap={() => {
        const { held } = look;
        const before = held.value;
        if (before === null) return;
        held.value = player.shown.value;
        desk.pick(before.index);
      }}
      onPickFrame={desk.pick}
      onStep={(frames) => void player.step(frames)}
    />
  );
}
