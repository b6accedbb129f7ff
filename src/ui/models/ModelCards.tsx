import { MODEL_ORDER } from '../../app/modelComparison';
import { MODEL_CARDS } from './words';

/** What each model takes for granted and where it comes from. */
export function ModelCards() {
  return (
    <section class="stack" aria-labelledby="model-cards">
      <h3 id="model-cards">What the models take for granted</h3>
      <div class="model-cards">
        {MODEL_ORDER.map((name) => {
          const { title, assumes, source } = MODEL_CARDS[name];
          return (
            <article key={name} class="model-card">
              <h4>{title}</h4>
              <p>{assumes}</p>
              <p class="muted">Source: {source}</p>
            </article>
          );
        })}
      </div>
    </section>
  );
}
