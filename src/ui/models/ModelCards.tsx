import { MODEL_ORDER } from '../../app/modelComparison';
import { t } from '../../text/text';
import { modelTitle } from './words';

/** What each model takes for granted and where it comes from. */
export function ModelCards() {
  return (
    <section class="stack" aria-labelledby="model-cards">
      <h3 id="model-cards">{t('models.cards.title')}</h3>
      <div class="model-cards">
        {MODEL_ORDER.map((name) => (
          <article key={name} class="model-card">
            <h4>{modelTitle(name)}</h4>
            <p>{t(`models.cards.${name}.assumes`)}</p>
            <p class="muted">
              {t('models.cards.source', { source: t(`models.cards.${name}.source`) })}
            </p>
          </article>
        ))}
      </div>
    </section>
  );
}
