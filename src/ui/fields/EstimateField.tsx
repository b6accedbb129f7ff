import type { ComponentChildren } from 'preact';
import type { Estimate } from '../../core/estimate';
import type { QuantityRule } from '../../core/quantityText';
import { t } from '../../text/text';
import { QuantityField } from './QuantityField';

export interface EstimateFieldProps {
  readonly label: string;
  readonly rule: QuantityRule;
  readonly value: Estimate | null;
  /** Standard uncertainty taken for a value typed for the first time. */
  readonly firstU: (value: number) => number;
  readonly optional?: boolean;
  readonly placeholder?: string;
  readonly hint?: ComponentChildren;
  onCommit(value: Estimate | null): void;
}

/** A value and its standard uncertainty side by side. */
export function EstimateField(props: EstimateFieldProps) {
  const { label, rule, value, firstU, optional, placeholder, hint, onCommit } = props;
  const uRule: QuantityRule = {
    name: `uncertainty of the ${rule.name}`,
    kind: rule.kind === 'temperature' ? 'temperatureDifference' : rule.kind,
    unit: rule.unit,
    sign: 'nonNegative',
  };
  return (
    <div>
      <div class="estimate">
        <QuantityField
          label={label}
          rule={rule}
          value={value?.value ?? null}
          optional={optional ?? false}
          placeholder={placeholder ?? ''}
          onCommit={(next) =>
            onCommit(next === null ? null : { value: next, u: value?.u ?? firstU(next) })
          }
        />
        <QuantityField
          label={t('fields.u')}
          rule={uRule}
          value={value?.u ?? null}
          disabled={value === null}
          onCommit={(u) => value !== null && u !== null && onCommit({ ...value, u })}
        />
      </div>
      {hint !== undefined && <p class="field-note">{hint}</p>}
    </div>
  );
}
