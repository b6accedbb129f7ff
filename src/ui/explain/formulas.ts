import type { StepName } from '../../app/draft';
import type { OwnNumbers } from '../../app/ownNumbers';
import { type Formula, group, minus, number, over, plus, root, symbol, times } from './term';

const s = symbol;

const FORMULAS: Readonly<Record<StepName, readonly Formula[]>> = {
  footage: [
    { left: 'duration', right: times(group(minus(s('frames'), number('1'))), s('interval')) },
  ],
  clock: [{ left: 'interval', right: over(number('1'), s('rate')) }],
  scale: [
    {
      left: 'oneScale',
      right: times(
        over(s('length'), s('lengthPixels')),
        over(s('cameraDistance'), plus(s('cameraDistance'), s('depth'))),
      ),
    },
  ],
  ball: [
    { left: 'centre', right: times(s('perPixel'), s('centrePixels')) },
    { left: 'blur', right: over(times(s('exitVelocity'), s('exposure')), s('perPixel')) },
  ],
  seal: [{ left: 'lead', right: minus(s('exitTime'), s('burstTime')) }],
  result: [
    {
      left: 'meanSpeed',
      right: over(minus(s('endPlace'), s('startPlace')), minus(s('endTime'), s('startTime'))),
    },
  ],
  models: [
    {
      left: 'mostSpeed',
      right: root(over(times(number('2'), s('pressure'), s('boreArea'), s('barrel')), s('mass'))),
    },
  ],
};

/** Without the camera's distance a length counts as lying in the flight plane. */
const FLAT_SCALE: Formula = { left: 'oneScale', right: over(s('length'), s('lengthPixels')) };

/** What a step works out, in the order it is told. */
export const formulasFor = (step: StepName, numbers: OwnNumbers): readonly Formula[] =>
  step === 'scale' && numbers.oneScale !== null && numbers.cameraDistance === null
    ? [FLAT_SCALE]
    : FORMULAS[step];
