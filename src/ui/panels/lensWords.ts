import type { Estimate } from '../../core/estimate';
import { formatNumber, formatQuantity } from '../../core/format';

/** How far a correction moves the corner of the picture: '12.3 ± 0.4 px outwards'. */
export function reachWords({ value, u }: Estimate): string {
  const size = Math.abs(value);
  if (size < 0.05 && u < 0.05) return 'by less than a tenth of a pixel';
  const way = value < 0 ? 'inwards' : 'outwards';
  const text =
    u > 0 ? formatQuantity({ value: size, u }, 'pixels', 'px') : `${formatNumber(size, 3)} px`;
  return `by ${text} ${way}`;
}
