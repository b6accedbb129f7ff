import { CAUTIONS, CAUTIONS_DEFER } from '../../app/cautions';
import { useDesk } from '../desk';

/** The usual cautions of such a launcher, shown before a shot's numbers. */
export function Cautions() {
  const desk = useDesk();
  if (!desk.cautionsOpen.value) return null;
  return (
    <section class="cautions" aria-labelledby="cautions-title">
      <h2 id="cautions-title">Before a shot</h2>
      <ul>
        {CAUTIONS.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p>{CAUTIONS_DEFER}</p>
      <button type="button" onClick={() => (desk.cautionsOpen.value = false)}>
        Close cautions
      </button>
    </section>
  );
}
