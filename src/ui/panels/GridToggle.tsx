import { formatNumber } from '../../core/format';
import { showAs } from '../../text/show';
import { t } from '../../text/text';
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
        {t('panels.grid.show')}
      </label>
      {gridShown.value && (
        <p class="field-note">{t('panels.grid.what', { field: showAs(field) })}</p>
      )}
    </div>
  );
}
