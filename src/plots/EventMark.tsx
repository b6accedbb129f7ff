import {
  type SymbolType,
  symbol,
  symbolCircle,
  symbolCross,
  symbolDiamond,
  symbolDiamond2,
  symbolSquare,
  symbolStar,
  symbolTriangle,
  symbolWye,
} from 'd3';
import type { TimelineEvent } from '../core/timeline';

/** Each kind of event has a shape of its own, so that its colour is not needed to tell it. */
const SHAPES: Readonly<Record<TimelineEvent['kind'], SymbolType>> = {
  puncture: symbolWye,
  onset: symbolTriangle,
  burst: symbolDiamond,
  contact: symbolSquare,
  exit: symbolCircle,
  target: symbolCross,
  burstHeard: symbolDiamond2,
  impactHeard: symbolStar,
};

/** CSS px^2. */
const AREA = 70;

interface EventMarkProps {
  readonly kind: TimelineEvent['kind'];
  readonly x: number;
  readonly y: number;
}

export const EventMark = ({ kind, x, y }: EventMarkProps) => (
  <path
    class="plot-event-mark"
    transform={`translate(${x} ${y})`}
    d={symbol(SHAPES[kind], AREA)() ?? ''}
  />
);
