import type { Estimate } from '../../core/estimate';
import { showNumber, showQuantity } from '../../text/show';
import { t } from '../../text/text';

/** How far a correction moves the corner of the picture: '12.3 ± 0.4 px outwards'. */
export function reachWords({ value, u }: Estimate): string {
  const size = Math.abs(value);
  if (size < 0.05 && u < 0.05) return t('panels.lens.reach.hardly');
  const pixels =
    u > 0 ? showQuantity({ value: size, u }, 'pixels', 'px') : `${showNumber(size, 3)} px`;
  return t(value < 0 ? 'panels.lens.reach.inwards' : 'panels.lens.reach.outwards', { pixels });
}
