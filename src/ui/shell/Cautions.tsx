import { CAUTIONS, CAUTIONS_DEFER } from '../../app/cautions';
import { useDesk } from '../desk';

/** The usual cautions of such a launcher, shown before a shot's numbers. */
export function Cautions() {
  const desk = useDesk();
  if (!desk.cautionsOpen.value) return null;
  const wide = window.matchMedia('(min-width: 761px)').matches;
  return (
    <details class="cautions" open={wide}>
      <summary>Before a shot: the usual cautions</summary>
      <ul>
        {CAUTIONS.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <div class="row">
        <p>{CAUTIONS_DEFER}</p>
        <button
          type="button"
          onClick={() => {
            desk.cautionsOpen.value = false;
          }}
        >
          Close cautions
        </button>
      </div>
    </details>
  );
}
