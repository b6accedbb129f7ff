import { setScale } from '../../app/edits';
import { type Lens, straightLens } from '../../app/lens';
import { useDesk } from '../desk';
import { EstimateField } from '../fields/EstimateField';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { Fold } from './Panel';

/** The lens by its numbers, for those who have them. */
export function LensValues({ lens }: { readonly lens: Lens | null }) {
  const { shots, films } = useDesk().session;
  const film = films.film.value?.info;
  if (film === undefined) return null;
  const set = (next: Lens, label: string) => shots.edit(setScale({ lens: next }), { label });
  return (
    <Fold title="By typing its values">
      <p class="muted">
        A point that a perfect lens shows r focal lengths from the centre is shown at r (1 + k1 r² +
        k2 r⁴).
      </p>
      {lens === null ? (
        <button
          type="button"
          class="cancel"
          onClick={() => set(straightLens(film), 'lens to be typed')}
        >
          Start from a lens without distortion
        </button>
      ) : (
        <Values lens={lens} set={(part, label) => set({ ...lens, ...part }, label)} />
      )}
    </Fold>
  );
}

function Values(props: {
  readonly lens: Lens;
  readonly set: (part: Partial<Lens>, label: string) => void;
}) {
  const { lens, set } = props;
  const [x, y] = lens.centre;
  return (
    <>
      <EstimateField
        label="k1"
        rule={RULES.distortion}
        value={lens.k1}
        firstU={() => 0}
        onCommit={(k1) => k1 !== null && set({ k1 }, 'k1 of the lens')}
      />
      <EstimateField
        label="k2"
        rule={RULES.distortion}
        value={lens.k2}
        firstU={() => 0}
        onCommit={(k2) => k2 !== null && set({ k2 }, 'k2 of the lens')}
      />
      <QuantityField
        label="Correlation of k1 and k2"
        rule={RULES.correlation}
        value={lens.correlation}
        onCommit={(correlation) =>
          correlation !== null && set({ correlation }, 'correlation of k1 and k2')
        }
      />
      <EstimateField
        label="Focal length"
        rule={RULES.focal}
        value={lens.focal}
        firstU={(focal) => focal * 0.02}
        hint="In pixels of the film. k1 and k2 are stated in terms of it."
        onCommit={(focal) => focal !== null && set({ focal }, 'focal length')}
      />
      <div class="pair">
        <QuantityField
          label="Lens centre x"
          rule={RULES.pixelPlace}
          value={x}
          onCommit={(next) => next !== null && set({ centre: [next, y] }, 'lens centre')}
        />
        <QuantityField
          label="Lens centre y"
          rule={RULES.pixelPlace}
          value={y}
          onCommit={(next) => next !== null && set({ centre: [x, next] }, 'lens centre')}
        />
      </div>
      <QuantityField
        label="± u of the centre each way"
        rule={RULES.centreU}
        value={lens.centreU}
        onCommit={(centreU) => centreU !== null && set({ centreU }, 'lens centre')}
      />
    </>
  );
}
