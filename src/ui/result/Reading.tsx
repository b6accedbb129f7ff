import type { ComponentChildren } from 'preact';
import { coverageFactor } from '../../app/flightPicture';
import { isAvailable, type Quantity, type Reported } from '../../core/estimate';
import { formatQuantity } from '../../core/format';
import type { UnitKind } from '../../core/unitTable';
import { ReasonText } from '../shell/Notices';
import { percent } from './words';

/** Stated with its expanded uncertainty, as the coverage beside it says. */
export const expanded = (quantity: Quantity, sign = 1) => ({
  value: quantity.value * sign,
  u: quantity.u * coverageFactor(quantity),
});

interface ReadingProps {
  readonly reported: Reported;
  readonly kind: UnitKind;
  readonly unit: string;
  /** Stands after the number. */
  readonly children?: ComponentChildren;
}

/** A number with its expanded uncertainty and coverage, or why there is none. */
export function Reading({ reported, kind, unit, children }: ReadingProps) {
  if (!isAvailable(reported)) {
    return (
      <div class="muted">
        <ReasonText reason={reported.unavailable} />
      </div>
    );
  }
  return (
    <p>
      <strong>{formatQuantity(expanded(reported), kind, unit)}</strong> (
      {percent(reported.coverage)}){children}
    </p>
  );
}

/** One named reading in a list of them. */
export function Finding(props: ReadingProps & { readonly name: string; readonly mark: string }) {
  const { name, mark, ...reading } = props;
  return (
    <div>
      <dt>{name}</dt>
      <dd data-role={mark}>
        <Reading {...reading} />
      </dd>
    </div>
  );
}

/** Several readings that are missing for one and the same reason are told of once. */
export function sharedReason(readings: readonly Reported[]) {
  const reasons = readings.flatMap((one) => (isAvailable(one) ? [] : [one.unavailable]));
  const [first, ...rest] = reasons;
  if (first === undefined || reasons.length < readings.length) return null;
  return rest.every(({ code, message }) => code === first.code && message === first.message)
    ? first
    : null;
}
