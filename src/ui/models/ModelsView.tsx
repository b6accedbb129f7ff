import { PREDICTIONS_CAUTION } from '../../app/cautions';
import { MODEL_ORDER } from '../../app/modelComparison';
import { useDesk } from '../desk';
import { GapTable } from './GapTable';
import { ModelCards } from './ModelCards';
import { Predict } from './ModelPanel';
import { ModelPlots } from './ModelPlots';
import { ResidualTable } from './ResidualTable';
import { SpeedTable } from './SpeedTable';

/** The film beside what launch models say of the same launcher. */
export function ModelsView() {
  const { models, shots } = useDesk().session;
  const draft = shots.draft.value;
  const views = models.views.value;
  const told = MODEL_ORDER.some((name) => views[name].prediction !== null);
  const stale = models.isStale.value;
  return (
    <section
      class={`models evidence stack ${stale ? 'stale' : ''}`}
      aria-label="Film against model"
    >
      <h2>Film against model</h2>
      <p class="notice notice-warning">{PREDICTIONS_CAUTION}</p>
      {stale && (
        <p class="stale-word" role="status">
          Launcher or film changed: predict again. Below is what the models said before.
        </p>
      )}
      {told ? (
        <>
          <SpeedTable />
          <ModelPlots />
          <ResidualTable />
          <GapTable />
        </>
      ) : (
        <Empty hasFilm={draft !== null} hasLauncher={draft?.launcher != null} />
      )}
      <ModelCards />
    </section>
  );
}

/** What is to be seen here, and what it takes. */
function Empty(props: { readonly hasFilm: boolean; readonly hasLauncher: boolean }) {
  const { hasFilm, hasLauncher } = props;
  return (
    <div class="models-empty stack">
      <p>
        Four models say how fast this launcher should fire and when its muzzle seal should open,
        each with the uncertainty that the inputs give it, beside what the film measured.
      </p>
      {!hasFilm ? (
        <p class="muted">Open footage first.</p>
      ) : hasLauncher ? (
        <Predict />
      ) : (
        <p class="muted">State the launcher in the sheet: bore, length and its two pressures.</p>
      )}
    </div>
  );
}
