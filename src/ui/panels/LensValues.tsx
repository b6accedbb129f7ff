import { setScale } from '../../app/edits';
import { type Lens, straightLens } from '../../app/lens';
import { t } from '../../text/text';
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
    <Fold title={t('panels.lens.typing.title')}>
      <p class="muted">{t('panels.lens.typing.formula')}</p>
      {lens === null ? (
        <button
          type="button"
          class="cancel"
          onClick={() => set(straightLens(film), 'lens to be typed')}
        >
          {t('panels.lens.typing.start')}
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
        label={t('panels.lens.typing.correlation')}
        rule={RULES.correlation}
        value={lens.correlation}
        onCommit={(correlation) =>
          correlation !== null && set({ correlation }, 'correlation of k1 and k2')
        }
      />
      <EstimateField
        label={t('panels.lens.focal')}
        rule={RULES.focal}
        value={lens.focal}
        firstU={(focal) => focal * 0.02}
        hint={t('panels.lens.typing.focalHint')}
        onCommit={(focal) => focal !== null && set({ focal }, 'focal length')}
      />
      <div class="pair">
        <QuantityField
          label={t('panels.lens.typing.centreX')}
          rule={RULES.pixelPlace}
          value={x}
          onCommit={(next) => next !== null && set({ centre: [next, y] }, 'lens centre')}
        />
        <QuantityField
          label={t('panels.lens.typing.centreY')}
          rule={RULES.pixelPlace}
          value={y}
          onCommit={(next) => next !== null && set({ centre: [x, next] }, 'lens centre')}
        />
      </div>
      <QuantityField
        label={t('panels.lens.typing.centreU')}
        rule={RULES.centreU}
        value={lens.centreU}
        onCommit={(centreU) => centreU !== null && set({ centreU }, 'lens centre')}
      />
    </>
  );
}
