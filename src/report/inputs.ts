import type { Estimate } from '../core/estimate';
import { fromSi, type UnitKind, unitOf } from '../core/unitTable';
import type { KnownLength, Shot } from '../shot/schema';
import { modelWords } from '../text/names';
import { showCount, showNumberAt, showPercent } from '../text/show';
import { t } from '../text/text';
import { head, number, type Table, text } from './table';

/** Name, value, standard uncertainty, unit or remark. */
type Row = readonly [name: string, value: string, u: string, unit: string];

/** Every number stated for the shot, with its standard uncertainty. */
export const inputsTable = (shot: Shot): Table => ({
  caption: t('report.inputs.caption'),
  columns: [
    head(t('report.inputs.input')),
    number(t('report.tables.main.value')),
    number('u'),
    text(t('report.tables.parameters.unit')),
  ],
  rows: [
    ...clockRows(shot),
    ...scaleRows(shot),
    ...ballRows(shot),
    ...airRows(shot),
    ...soundRows(shot),
    ...launcherRows(shot),
  ],
});

/** As it was stated: what a person typed is not rounded to its uncertainty. */
const stated = (x: number): string => showNumberAt(x, 7);

function measured(
  name: string,
  estimate: Estimate | null,
  kind: UnitKind,
  symbol: string,
): readonly Row[] {
  if (estimate === null) return [];
  const unit = unitOf(kind, symbol);
  const u = estimate.u / unit.factor;
  return [
    [
      name,
      stated(fromSi(estimate.value, unit)),
      u === 0 ? t('report.inputs.exact') : stated(u),
      unit.symbol,
    ],
  ];
}

/** A number without an uncertainty of its own. */
const plainRow = (name: string, value: number, unit: string): Row => [
  name,
  stated(value),
  '',
  unit,
];

function clockRows({ timing }: Shot): readonly Row[] {
  const { recordingRate, exposure, readout } = timing;
  return [
    ...measured(t('report.inputs.recordingRate'), recordingRate, 'rate', '/s'),
    ...measured(t('report.inputs.exposure'), exposure, 'time', 'µs'),
    ...(readout.lineTime.value === 0
      ? []
      : measured(
          t('report.inputs.lineTime', { direction: readout.direction }),
          readout.lineTime,
          'time',
          'µs',
        )),
  ];
}

function scaleRows({ scale, muzzle }: Shot): readonly Row[] {
  const { lengths, cameraDistance, plane, lens } = scale;
  return [
    ...lengths.flatMap((one, i) => lengthRows(one, lengths.length > 1 ? ` ${i + 1}` : '')),
    ...measured(t('report.inputs.cameraDistance'), cameraDistance, 'length', 'm'),
    ...(plane === null
      ? []
      : [
          ...measured(
            t('report.inputs.planeWidth'),
            { value: plane.width, u: plane.u },
            'length',
            'mm',
          ),
          ...measured(
            t('report.inputs.planeHeight'),
            { value: plane.height, u: plane.u },
            'length',
            'mm',
          ),
          ...measured(
            t('report.inputs.planeDepth'),
            { value: plane.depthOffset, u: plane.depthOffsetU },
            'length',
            'mm',
          ),
          plainRow(t('report.inputs.planeCorner'), plane.cornerU, 'px'),
        ]),
    ...(lens === null
      ? []
      : [
          ...measured(t('report.inputs.lensDistortion', { term: 'k1' }), lens.k1, 'count', ''),
          ...measured(t('report.inputs.lensDistortion', { term: 'k2' }), lens.k2, 'count', ''),
          ...measured(t('report.inputs.focalLength'), lens.focal, 'pixels', 'px'),
        ]),
    ...(muzzle === null ? [] : [plainRow(t('report.inputs.muzzleU'), muzzle.u, 'px')]),
  ];
}

function lengthRows(one: KnownLength, index: string): readonly Row[] {
  return [
    ...measured(
      t('report.inputs.length', { index }),
      { value: one.length, u: one.u },
      'length',
      'mm',
    ),
    plainRow(t('report.inputs.lengthEnd', { index }), one.endpointU, 'px'),
    ...measured(
      t('report.inputs.lengthDepth', { index }),
      { value: one.depthOffset, u: one.depthOffsetU },
      'length',
      'mm',
    ),
  ];
}

const ballRows = ({ ball }: Shot): readonly Row[] => [
  ...measured(t('report.inputs.ballDiameter'), ball.diameter, 'length', 'mm'),
  ...measured(t('report.inputs.ballMass'), ball.mass, 'mass', 'g'),
];

const airRows = ({ air }: Shot): readonly Row[] => [
  ...measured(t('report.inputs.airTemperature'), air.temperature, 'temperature', 'K'),
  ...measured(t('report.inputs.airPressure'), air.pressure, 'pressure', 'hPa'),
  ...measured(t('report.inputs.humidity'), air.humidity, 'share', '%'),
];

function soundRows({ sound, target }: Shot): readonly Row[] {
  return [
    ...measured(t('report.inputs.targetDistance'), target?.distance ?? null, 'length', 'm'),
    ...measured(t('report.inputs.soundOffset'), sound?.offset ?? null, 'time', 'ms'),
    ...measured(
      t('report.inputs.microphoneDistance'),
      sound?.microphone.distance ?? null,
      'length',
      'm',
    ),
    ...measured(
      t('report.inputs.microphoneToBackstop'),
      sound?.microphone.toBackstop ?? null,
      'length',
      'm',
    ),
    ...measured(
      t('report.inputs.backstopDistance'),
      sound?.backstopDistance ?? null,
      'length',
      'm',
    ),
  ];
}

function launcherRows({ launcher }: Shot): readonly Row[] {
  if (launcher === null) return [];
  return [
    ...measured(t('report.inputs.boreDiameter'), launcher.boreDiameter, 'length', 'mm'),
    ...measured(t('report.inputs.barrelLength'), launcher.barrelLength, 'length', 'm'),
    ...measured(t('report.inputs.residualPressure'), launcher.residualPressure, 'pressure', 'hPa'),
    ...measured(
      t('report.inputs.sealBurstPressure'),
      launcher.sealBurstPressure,
      'pressure',
      'hPa',
    ),
    ...measured(t('report.inputs.startPosition'), launcher.startPosition, 'length', 'mm'),
    ...measured(t('report.inputs.gapDischarge'), launcher.gapDischarge, 'count', ''),
    ...measured(t('report.inputs.entranceLoss'), launcher.entranceLoss, 'count', ''),
    ...measured(t('report.inputs.wallFriction'), launcher.wallFriction, 'count', ''),
    ...measured(t('report.inputs.ballFriction'), launcher.ballFriction, 'count', ''),
  ];
}

/** How the shot was reduced, a setting a line. */
export function settings(shot: Shot): readonly { readonly name: string; readonly text: string }[] {
  const { timing, edits, fit, seals } = shot;
  const lost = timing.droppedFrames.reduce((sum, { count }) => sum + count, 0);
  const none = t('report.settings.none');
  const told = [
    [t('report.settings.clock'), t('report.settings.clockFrom', { source: timing.source })],
    [t('report.settings.lost'), lost === 0 ? none : showCount(lost)],
    [t('report.settings.motion'), modelWords(fit.model)],
    [
      t('report.settings.outliers'),
      t('report.settings.outliersCount', { robust: fit.robust ? 'yes' : 'no' }),
    ],
    [t('report.settings.coverage'), showPercent(shot.coverage)],
    [
      t('report.settings.seal'),
      seals?.muzzle == null ? t('report.settings.noSeal') : burstWords(seals.muzzle.burstBetween),
    ],
    [t('report.settings.rejected'), framesText(edits.rejectedFrames)],
    [t('report.settings.placed'), framesText(edits.manualPoints.map(({ frame }) => frame))],
    [t('report.settings.shown'), framesText(edits.seeds.map(({ frame }) => frame))],
    [t('report.settings.setup'), shot.setupId ?? t('report.settings.noSetup')],
    [t('report.settings.seed'), String(shot.seed)],
  ] as const;
  return told.map(([name, value]) => ({ name, text: value }));
}

const burstWords = (between: readonly [number, number] | null): string =>
  between === null
    ? t('report.settings.burstFound')
    : t('report.settings.burstByHand', { from: `${between[0]}`, to: `${between[1]}` });

const framesText = (frames: readonly number[]): string =>
  frames.length === 0 ? t('report.settings.none') : [...frames].sort((a, b) => a - b).join(', ');
