import { MODEL_ORDER } from '../../app/modelComparison';
import { t } from '../../text/text';
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
      aria-label={t('models.view.title')}
    >
      <h2>{t('models.view.title')}</h2>
      <p class="notice notice-warning">{t('models.caution')}</p>
      {stale && (
        <p class="stale-word" role="status">
          {t('models.view.stale')}
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
      <p>{t('models.view.what')}</p>
      {!hasFilm ? (
        <p class="muted">{t('panels.openFirst')}</p>
      ) : hasLauncher ? (
        <Predict />
      ) : (
        <p class="muted">{t('models.view.stateLauncher')}</p>
      )}
    </div>
  );
}
