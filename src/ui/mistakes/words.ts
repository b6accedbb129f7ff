import type { Mistake } from '../../app/mistakes';
import type { UnitKind } from '../../core/unitTable';
import { showQuantity } from '../../text/show';
import { t } from '../../text/text';

const UNITS: Readonly<Record<string, readonly [UnitKind, string]>> = {
  depth: ['length', 'mm'],
  distance: ['length', 'm'],
  lineTime: ['time', 'µs'],
  short: ['time', 'µs'],
  long: ['time', 'µs'],
};

/** What was done wrong, its numbers with their units. */
export function whatWords({ name, inputs }: Mistake): string {
  const of = (input: string) => inputText(input, inputs[input] ?? 0);
  switch (name) {
    case 'wrongRate':
      return t('mistakes.wrongRate.what', { rate: of('rate'), typed: of('typed') });
    case 'lostFrames':
      return t('mistakes.lostFrames.what', { after: of('after') });
    case 'wrongPlane':
    case 'parallax':
      return t(`mistakes.${name}.what`, { depth: of('depth'), distance: of('distance') });
    case 'rollingShutter':
      return t('mistakes.rollingShutter.what', { lineTime: of('lineTime') });
    case 'blur':
      return t('mistakes.blur.what', { long: of('long'), short: of('short') });
  }
}

function inputText(name: string, value: number): string {
  const unit = UNITS[name];
  const show = ([kind, symbol]: readonly [UnitKind, string]) =>
    showQuantity({ value, u: 0 }, kind, symbol);
  if (unit !== undefined) return show(unit);
  const number = show(['count', '']);
  return name === 'rate' || name === 'typed'
    ? t('panels.framesPerSecond', { rate: number })
    : number;
}
