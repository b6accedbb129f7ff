import { foundSize, type Mistake } from '../../app/mistakes';
import type { Estimate } from '../../core/estimate';
import { showFixed, showNumber, showQuantity } from '../../text/show';
import { t } from '../../text/text';

/** What came out right and wrong, and how large the error is beside what the formula expects. */
export function SizeTable({ mistake }: { readonly mistake: Mistake }) {
  const { name, of, right, wrong, truth, expected } = mistake;
  const beside = (found: Mistake['right']) =>
    of === 'centreU'
      ? t('mistakes.withSpeed', { speed: speedText(found) })
      : t('mistakes.framesUsed', { frames: found.frames });
  const rows: readonly (readonly [string, string, string])[] = [
    [t('mistakes.right'), outcome(of, right), beside(right)],
    [t('mistakes.wrong'), outcome(of, wrong), beside(wrong)],
    ...(of === 'centreU' ? [] : [[t('mistakes.truth'), trueText(of, truth), ''] as const]),
  ];
  return (
    <table class="mistake-size">
      <caption>{t(`mistakes.quantity.${of}`)}</caption>
      <tbody>
        {rows.map(([side, value, more]) => (
          <tr key={side}>
            <th scope="row">{side}</th>
            <td>{value}</td>
            <td class="muted">{more}</td>
          </tr>
        ))}
        <tr class="mistake-found" data-mistake={name}>
          <th scope="row">{t('mistakes.size')}</th>
          <td>{t('mistakes.found', { size: sizeText(of, foundSize(mistake)) })}</td>
          <td>{t('mistakes.expected', { size: sizeText(of, expected) })}</td>
        </tr>
      </tbody>
    </table>
  );
}

const twice = ({ value, u }: Estimate): Estimate => ({ value, u: 2 * u });

const speedText = ({ speed }: Mistake['right']): string =>
  showQuantity(twice(speed), 'speed', 'm/s');

function outcome(of: Mistake['of'], found: Mistake['right']): string {
  switch (of) {
    case 'speed':
      return speedText(found);
    case 'exitTime':
      return showQuantity(twice(found.exitTime), 'time', 'ms');
    case 'centreU':
      return `${showNumber(found.centreU * 1e6, 2)} µm`;
  }
}

function trueText(of: 'speed' | 'exitTime', truth: Mistake['truth']): string {
  return of === 'speed'
    ? showQuantity({ value: truth.speed, u: 0.01 }, 'speed', 'm/s', false)
    : showQuantity({ value: truth.exitTime, u: 1e-6 }, 'time', 'ms', false);
}

/** With its sign; a factor as a factor. */
function sizeText(of: Mistake['of'], size: number): string {
  const sign = size > 0 ? '+' : '';
  switch (of) {
    case 'speed':
      return `${sign}${showFixed(100 * size, 1).replace('-', '−')}\u00a0%`;
    case 'exitTime':
      return `${sign}${showFixed(1e6 * size, 1).replace('-', '−')}\u00a0µs`;
    case 'centreU':
      return `× ${showFixed(size, 1)}`;
  }
}
