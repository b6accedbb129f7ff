import type { InspectionState } from '../../app/inspecting';
import { residualReading } from '../../app/inspectionReadings';
import { residualsOf } from '../../app/plotData';
import type { Position, Result } from '../../app/resultTypes';
import { showFixed, showNumber, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { Facts } from '../panels/Facts';

type Fact = readonly [name: string, value: string];

/** Always with its sign, but for nothing at all. */
function signed(value: number, decimals: number): string {
  const text = showFixed(Math.abs(value), decimals);
  if (!/[1-9]/.test(text)) return text;
  return `${value < 0 ? '−' : '+'}${text}`;
}

const share = (value: number): string => `${Math.round(value * 100)} %`;

/** Everything told of one frame's centre and of the fit behind it, in figures. */
export function FitNumbers(props: {
  readonly result: Result;
  readonly position: Position | null;
  readonly inspection: InspectionState;
}) {
  const { result, position, inspection } = props;
  const facts = [
    ...(position === null ? [] : centreFacts(position, result)),
    ...fitFacts(inspection, position),
  ];
  return facts.length === 0 ? null : (
    <section class="fit-numbers" aria-label={t('frames.figures.label')}>
      <Facts facts={facts} />
    </section>
  );
}

function centreFacts(position: Position, result: Result): Fact[] {
  const { frame, time, x, y, ux, uy, cov, s, us, visible, shift, manual } = position;
  const facts: Fact[] = [];
  if (x !== null && ux !== null) {
    facts.push([t('frames.figures.x'), showQuantity({ value: x, u: ux }, 'pixels', 'px')]);
  }
  if (y !== null && uy !== null) {
    facts.push([t('frames.figures.y'), showQuantity({ value: y, u: uy }, 'pixels', 'px')]);
  }
  if (!manual && ux !== null && uy !== null && cov !== null && ux > 0 && uy > 0) {
    facts.push([t('frames.figures.correlation'), signed(cov / (ux * uy), 2)]);
  }
  if (x !== null && !manual) facts.push([t('frames.figures.outlineSeen'), share(visible)]);
  facts.push([t('frames.figures.time'), `${showNumber(time * 1000, 6)} ms`]);
  if (s !== null && us !== null) {
    facts.push([t('frames.figures.fromMuzzle'), showQuantity({ value: s, u: us }, 'length', 'mm')]);
  }
  const residual = residualsOf(result).find((one) => one.frame === frame);
  if (residual !== undefined && residual.u > 0) {
    const off = residual.residual / residual.u;
    facts.push([t('frames.figures.offPath'), `${signed(off, 1)} u`]);
  }
  if (shift[0] !== 0 || shift[1] !== 0) {
    const [right, down] = shift;
    facts.push([
      t('frames.figures.sceneMoved'),
      t('frames.figures.sceneMovedBy', { right: signed(right, 3), down: signed(down, 3) }),
    ]);
  }
  return facts;
}

function fitFacts(state: InspectionState, position: Position | null): Fact[] {
  if (state.kind !== 'ready') return [];
  const { inspection } = state;
  const facts: Fact[] = [];
  if (inspection.measurement.ok) {
    const { x, y, varX, varY, radius, contrast, saturated, look, blur } =
      inspection.measurement.value;
    if (position?.manual === true) {
      const measured = (value: number, variance: number) =>
        showQuantity({ value, u: Math.sqrt(variance) }, 'pixels', 'px');
      facts.push(
        [t('frames.figures.measuredX'), measured(x, varX)],
        [t('frames.figures.measuredY'), measured(y, varY)],
      );
    }
    facts.push([t('frames.figures.radius'), showQuantity(radius, 'pixels', 'px')]);
    if (look !== undefined)
      facts.push([t('frames.figures.softness'), `${showFixed(look.sigma, 2)} px`]);
    if (blur !== undefined) {
      const stretch = showQuantity({ value: blur.stretch, u: blur.u }, 'count', '');
      facts.push([t('frames.figures.blur'), stretch]);
    }
    facts.push([
      t('frames.figures.contrast'),
      t('frames.figures.contrastIs', { number: showNumber(contrast, 3) }),
    ]);
    if (saturated > 0) facts.push([t('frames.figures.overexposed'), share(saturated)]);
  }
  const reading = residualReading(inspection);
  if (reading !== null) {
    facts.push([t('frames.figures.leftOver'), showFixed(reading.rms, 2)]);
    facts.push([t('frames.figures.largest'), signed(reading.largest, 1)]);
  }
  return facts;
}
