import { type Field, sidesOf } from './Chart';
import type { PlotInstant } from './props';
import type { ShownUnit } from './units';

interface InstantsProps {
  readonly field: Field;
  readonly instants: readonly PlotInstant[];
  readonly unit: ShownUnit;
}

/** Their coverage intervals as bands and the instants themselves as lines, over the height of the field. */
export function Instants({ field, instants, unit }: InstantsProps) {
  const { top, bottom } = field;
  return (
    <>
      {instants.map(({ kind, time, low, high }) => {
        const left = field.x(low * unit.perSi);
        const right = field.x(high * unit.perSi);
        const middle = field.x(time * unit.perSi);
        return (
          <g key={kind} class={`plot-instant plot-instant-${kind}`}>
            <rect x={left} y={top} width={Math.max(right - left, 0)} height={bottom - top} />
            <path d={`M${middle} ${top}V${bottom}`} />
          </g>
        );
      })}
    </>
  );
}

/** CSS px. */
const ROW = 17;
const CHARACTER = 6.6;
const GAP = 14;

export interface PlacedLabel {
  readonly instant: PlotInstant;
  readonly anchor: 'start' | 'end';
  /** 0: nearest the field. */
  readonly row: number;
}

interface Span {
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly anchor: 'start' | 'end';
  readonly instant: PlotInstant;
}

/**
 * Gives each label a side of its line and a row, so that it meets neither another label nor another's line:
 * right where there is room, else left; of several that lean the same way, the one leaned over goes lower.
 */
export function placeLabels(
  instants: readonly PlotInstant[],
  unit: ShownUnit,
  domain: readonly [number, number],
  width: number,
): readonly PlacedLabel[] {
  const { left, right } = sidesOf(width);
  const perShown = (right - left) / (domain[1] - domain[0] || 1);
  const starts: Span[] = [];
  const ends: Span[] = [];
  for (const instant of [...instants].sort((a, b) => b.time - a.time)) {
    const at = left + (instant.time * unit.perSi - domain[0]) * perShown;
    const length = instant.label.length * CHARACTER + GAP;
    const crossed = ends.some((other) => at > other.from && at + length > other.at);
    const leansLeft = at + length > right || (crossed && at - length > 0);
    if (leansLeft) ends.push({ at, from: at - length, to: at, anchor: 'end', instant });
    else starts.push({ at, from: at, to: at + length, anchor: 'start', instant });
  }
  const placed: (Span & PlacedLabel)[] = [];
  for (const span of [...ends.reverse(), ...starts]) {
    const met = placed.filter((other) => span.from < other.to && span.to > other.from);
    placed.push({ ...span, row: Math.max(-1, ...met.map(({ row }) => row)) + 1 });
  }
  return placed;
}

/** Room the labels need above the field, CSS px. */
export const headroomFor = (labels: readonly PlacedLabel[]): number =>
  labels.length === 0 ? 0 : (Math.max(...labels.map(({ row }) => row)) + 1) * ROW + 2;

interface InstantLabelsProps {
  readonly field: Field;
  readonly labels: readonly PlacedLabel[];
  readonly unit: ShownUnit;
}

/** Labels above the field, each at the foot of a short line down to its instant. */
export function InstantLabels({ field, labels, unit }: InstantLabelsProps) {
  return (
    <>
      {labels.map(({ instant, anchor, row }) => {
        const x = field.x(instant.time * unit.perSi);
        if (x < field.left || x > field.right) return null;
        const baseline = field.top - 6 - row * ROW;
        return (
          <g key={instant.kind} class={`plot-instant plot-instant-${instant.kind}`}>
            <path d={`M${x} ${baseline - 9}V${field.top}`} />
            <text x={x + (anchor === 'start' ? 5 : -5)} y={baseline} text-anchor={anchor}>
              {instant.label}
            </text>
          </g>
        );
      })}
    </>
  );
}
