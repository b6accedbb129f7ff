import type { DraftPlane } from '../../app/draft';
import { changePlane, newPlane, setScale } from '../../app/edits';
import { useDesk } from '../desk';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { GridToggle } from './GridToggle';
import { Fold, ToolButton } from './Panel';

/** A rectangle of known size marked on the film, for a camera that does not look squarely at the flight. */
export function PlaneSection() {
  const desk = useDesk();
  const { shots, films } = desk.session;
  const plane = shots.draft.value?.scale.plane ?? null;
  const film = films.film.value?.info;
  if (film === undefined) return null;
  const mark = () => {
    shots.edit(setScale({ plane: newPlane(film.width, film.height) }), { label: 'plane' });
    desk.mode.value = { kind: 'plane' };
  };
  const remove = () => {
    desk.putDown();
    shots.edit(setScale({ plane: null }), { label: 'plane removed' });
  };
  return (
    <Fold
      title={`Plane: ${plane === null ? 'camera taken to look squarely' : 'marked'}`}
      opened={plane !== null}
    >
      <p class="muted">
        Needed where the camera does not look squarely at the flight: lengths on one side of the
        picture then look shorter than on the other. Four corners of a rectangle of known size,
        parallel to the flight, say how the view is tilted. The plane then sets the scale, and known
        lengths are held against it.
      </p>
      {plane === null ? (
        <button type="button" class="cancel" onClick={mark}>
          Mark a rectangle on the film
        </button>
      ) : (
        <>
          <div class="row">
            <ToolButton mode={{ kind: 'plane' }}>Move its corners</ToolButton>
            <button type="button" onClick={remove}>
              Remove the plane
            </button>
          </div>
          <p class="field-note">
            Corner 1 is the top left as seen, and on clockwise. Drag each onto its corner; Tab and
            the arrow keys do it finely.
          </p>
          <PlaneInputs plane={plane} />
          <Troubles />
          <GridToggle />
        </>
      )}
    </Fold>
  );
}

/** What the sheet's top warns of, in short beside the inputs that it is about. */
const TROUBLES: Readonly<Record<string, string>> = {
  notARectangle: 'The corners are not those of such a rectangle.',
  planeDisagrees: 'Plane and known lengths disagree.',
  planeCorners: 'These corners tell no view.',
  planeDistance: 'Corners, sides and camera distance do not go together.',
  beyondHorizon: 'The corners tilt the view too far.',
};

function Troubles() {
  const scale = useDesk().session.readings.scale.value;
  if (scale === null) return null;
  const reasons = scale.ok ? scale.value.warnings : [scale.reason];
  const troubles = reasons.flatMap(({ code }) => TROUBLES[code] ?? []);
  if (troubles.length === 0) return null;
  return <p class="field-problem">{troubles.join(' ')} The top of this sheet says more.</p>;
}

function PlaneInputs({ plane }: { readonly plane: DraftPlane }) {
  const { shots } = useDesk().session;
  const change = (part: Partial<DraftPlane>, label: string) =>
    shots.edit(changePlane(part), { label: `${label} of the plane` });
  return (
    <>
      <div class="pair">
        <QuantityField
          label="Width, corner 1 to 2"
          rule={RULES.planeSide}
          value={plane.width}
          placeholder="200 mm"
          onCommit={(width) => change({ width }, 'width')}
        />
        <QuantityField
          label="Height, corner 2 to 3"
          rule={RULES.planeSide}
          value={plane.height}
          placeholder="50 mm"
          onCommit={(height) => change({ height }, 'height')}
        />
      </div>
      <div class="pair">
        <QuantityField
          label="± u of each side"
          rule={RULES.lengthU}
          value={plane.u}
          onCommit={(u) => u !== null && change({ u }, 'uncertainty')}
        />
        <QuantityField
          label="± u of each corner"
          rule={RULES.pixelU}
          value={plane.cornerU}
          onCommit={(cornerU) => cornerU !== null && change({ cornerU }, 'corner uncertainty')}
        />
      </div>
      <div class="estimate">
        <QuantityField
          label="Depth behind the flight"
          rule={RULES.depthOffset}
          value={plane.depthOffset}
          hint="Negative: nearer to the camera."
          onCommit={(depthOffset) => depthOffset !== null && change({ depthOffset }, 'depth')}
        />
        <QuantityField
          label="± u"
          rule={RULES.depthOffsetU}
          value={plane.depthOffsetU}
          onCommit={(u) => u !== null && change({ depthOffsetU: u }, 'depth uncertainty')}
        />
      </div>
    </>
  );
}
