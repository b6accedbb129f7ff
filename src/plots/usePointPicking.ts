import { useState } from 'preact/hooks';
import type { Field } from './Chart';
import type { PlotPoint, Units } from './marks';

/** A point this near the pointer counts as pointed at, CSS px. */
const REACH = 16;

/** The measured point nearest the pointer, and a click on it. */
export function usePointPicking(
  points: readonly PlotPoint[],
  units: Units,
  onPickFrame: ((frame: number) => void) | undefined,
) {
  const [pointed, setPointed] = useState<PlotPoint | null>(null);
  return {
    pointed,
    onPointer(place: { readonly left: number; readonly top: number } | null, field: Field) {
      setPointed(place === null ? null : nearest(points, units, field, place));
    },
    onClick() {
      if (pointed !== null) onPickFrame?.(pointed.frame);
    },
  };
}

function nearest(
  points: readonly PlotPoint[],
  units: Units,
  field: Field,
  place: { readonly left: number; readonly top: number },
): PlotPoint | null {
  let best: PlotPoint | null = null;
  let shortest = REACH;
  for (const point of points) {
    const x = field.x(point.time * units.x.perSi);
    // A point beyond the field is drawn, and found, at its edge.
    const y = Math.min(Math.max(field.y(point.value * units.y.perSi), field.top), field.bottom);
    const away = Math.hypot(x - place.left, y - place.top);
    if (away >= shortest) continue;
    shortest = away;
    best = point;
  }
  return best;
}
