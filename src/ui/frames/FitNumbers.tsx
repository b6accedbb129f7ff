import type { InspectionState } from '../../app/inspecting';
import { residualReading } from '../../app/inspectionReadings';
import { residualsOf } from '../../app/plotData';
import type { Position, Result } from '../../app/resultTypes';
import { formatNumber, formatQuantity } from '../../core/format';
import { Facts } from '../panels/Panel';

type Fact = readonly [name: string, value: string];

/** Always with its sign, but for nothing at all. */
function signed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
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
    <section class="fit-numbers" aria-label="Figures of this frame">
      <Facts facts={facts} />
    </section>
  );
}

function centreFacts(position: Position, result: Result): Fact[] {
  const { frame, time, x, y, ux, uy, cov, s, us, visible, shift, manual } = position;
  const facts: Fact[] = [];
  if (x !== null && ux !== null) {
    facts.push(['Centre x', formatQuantity({ value: x, u: ux }, 'pixels', 'px')]);
  }
  if (y !== null && uy !== null) {
    facts.push(['Centre y', formatQuantity({ value: y, u: uy }, 'pixels', 'px')]);
  }
  if (!manual && ux !== null && uy !== null && cov !== null && ux > 0 && uy > 0) {
    facts.push(['Correlation of x and y', signed(cov / (ux * uy), 2)]);
  }
  if (x !== null && !manual) facts.push(['Outline seen', share(visible)]);
  facts.push(['Time', `${formatNumber(time * 1000, 6)} ms`]);
  if (s !== null && us !== null) {
    facts.push(['From the muzzle plane', formatQuantity({ value: s, u: us }, 'length', 'mm')]);
  }
  const residual = residualsOf(result).find((one) => one.frame === frame);
  if (residual !== undefined && residual.u > 0) {
    const off = residual.residual / residual.u;
    facts.push(['Off the fitted path', `${signed(off, 1)} u`]);
  }
  if (shift[0] !== 0 || shift[1] !== 0) {
    const [right, down] = shift;
    facts.push(['Scene moved by', `${signed(right, 3)}, ${signed(down, 3)} px`]);
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
        formatQuantity({ value, u: Math.sqrt(variance) }, 'pixels', 'px');
      facts.push(['Measured x', measured(x, varX)], ['Measured y', measured(y, varY)]);
    }
    facts.push(['Radius', formatQuantity(radius, 'pixels', 'px')]);
    if (look !== undefined) facts.push(['Softness of the edge', `${look.sigma.toFixed(2)} px`]);
    if (blur !== undefined) {
      const stretch = formatQuantity({ value: blur.stretch, u: blur.u }, 'count', '');
      facts.push(['Blur, of that expected', stretch]);
    }
    facts.push(['Ball against background', `${formatNumber(contrast, 3)} grey values`]);
    if (saturated > 0) facts.push(['Overexposed', share(saturated)]);
  }
  const reading = residualReading(inspection);
  if (reading !== null) {
    facts.push(['Left over, times the noise', reading.rms.toFixed(2)]);
    facts.push(['Largest, times the noise', signed(reading.largest, 1)]);
  }
  return facts;
}
