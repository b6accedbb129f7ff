import { formatNumber } from '../../core/format';
import { useDesk } from '../desk';

/** Lays the flight plane's grid over the film, so that what lens and plane do can be seen. */
export function GridToggle() {
  const { gridShown, session } = useDesk();
  const grid = session.readings.grid.value;
  const scale = session.readings.scale.value;
  if (grid === null) return null;
  const field = scale?.ok
    ? `${formatNumber(grid.spacing * scale.value.value * 1000, 3)} mm`
    : `${formatNumber(grid.spacing, 3)} px`;
  return (
    <div>
      <label class="option">
        <input
          type="checkbox"
          checked={gridShown.value}
          onChange={(event) => {
            gridShown.value = event.currentTarget.checked;
          }}
        />
        Show a grid of the flight plane on the film
      </label>
      {gridShown.value && (
        <p class="field-note">
          Its lines are straight and {field} apart in the plane of flight. What is straight there
          should run along with them on the film.
        </p>
      )}
    </div>
  );
}
