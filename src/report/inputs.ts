import type { Estimate } from '../core/estimate';
import { formatCount, numberAt, percent } from '../core/format';
import { fromSi, type UnitKind, unitOf } from '../core/unitTable';
import type { KnownLength, Shot } from '../shot/schema';
import { head, number, type Table, text } from './table';
import { modelWords } from './words';

/** Name, value, standard uncertainty, unit or remark. */
type Row = readonly [name: string, value: string, u: string, unit: string];

/** Every number stated for the shot, with its standard uncertainty. */
export const inputsTable = (shot: Shot): Table => ({
  caption: 'What was stated, with standard uncertainties',
  columns: [head('Input'), number('Value'), number('u'), text('Unit')],
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
const stated = (x: number): string => numberAt(x, 7);

function measured(
  name: string,
  estimate: Estimate | null,
  kind: UnitKind,
  symbol: string,
): readonly Row[] {
  if (estimate === null) return [];
  const unit = unitOf(kind, symbol);
  const u = estimate.u / unit.factor;
  return [[name, stated(fromSi(estimate.value, unit)), u === 0 ? 'exact' : stated(u), unit.symbol]];
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
    ...measured('recording rate', recordingRate, 'rate', '/s'),
    ...measured('exposure', exposure, 'time', 'µs'),
    ...(readout.lineTime.value === 0
      ? []
      : measured(`time per line, read ${readout.direction}`, readout.lineTime, 'time', 'µs')),
  ];
}

function scaleRows({ scale, muzzle }: Shot): readonly Row[] {
  const { lengths, cameraDistance, plane, lens } = scale;
  return [
    ...lengths.flatMap((one, i) => lengthRows(one, lengths.length > 1 ? ` ${i + 1}` : '')),
    ...measured('camera distance', cameraDistance, 'length', 'm'),
    ...(plane === null
      ? []
      : [
          ...measured('width of the plane', { value: plane.width, u: plane.u }, 'length', 'mm'),
          ...measured('height of the plane', { value: plane.height, u: plane.u }, 'length', 'mm'),
          ...measured(
            'depth of the plane',
            { value: plane.depthOffset, u: plane.depthOffsetU },
            'length',
            'mm',
          ),
          plainRow('u of each corner of the plane', plane.cornerU, 'px'),
        ]),
    ...(lens === null
      ? []
      : [
          ...measured('lens distortion k1', lens.k1, 'count', ''),
          ...measured('lens distortion k2', lens.k2, 'count', ''),
          ...measured('focal length', lens.focal, 'pixels', 'px'),
        ]),
    ...(muzzle === null ? [] : [plainRow('u of the muzzle plane’s place', muzzle.u, 'px')]),
  ];
}

function lengthRows(one: KnownLength, index: string): readonly Row[] {
  return [
    ...measured(`known length${index}`, { value: one.length, u: one.u }, 'length', 'mm'),
    plainRow(`u of each end of known length${index}`, one.endpointU, 'px'),
    ...measured(
      `depth of known length${index}`,
      { value: one.depthOffset, u: one.depthOffsetU },
      'length',
      'mm',
    ),
  ];
}

const ballRows = ({ ball }: Shot): readonly Row[] => [
  ...measured('ball diameter', ball.diameter, 'length', 'mm'),
  ...measured('ball mass', ball.mass, 'mass', 'g'),
];

const airRows = ({ air }: Shot): readonly Row[] => [
  ...measured('air temperature', air.temperature, 'temperature', 'K'),
  ...measured('air pressure', air.pressure, 'pressure', 'hPa'),
  ...measured('relative humidity', air.humidity, 'share', '%'),
];

function soundRows({ sound, target }: Shot): readonly Row[] {
  return [
    ...measured('target distance', target?.distance ?? null, 'length', 'm'),
    ...measured('sound offset', sound?.offset ?? null, 'time', 'ms'),
    ...measured('microphone distance', sound?.microphone.distance ?? null, 'length', 'm'),
    ...measured('microphone to backstop', sound?.microphone.toBackstop ?? null, 'length', 'm'),
    ...measured('backstop distance', sound?.backstopDistance ?? null, 'length', 'm'),
  ];
}

function launcherRows({ launcher }: Shot): readonly Row[] {
  if (launcher === null) return [];
  return [
    ...measured('bore diameter', launcher.boreDiameter, 'length', 'mm'),
    ...measured('barrel length', launcher.barrelLength, 'length', 'm'),
    ...measured('residual pressure', launcher.residualPressure, 'pressure', 'hPa'),
    ...measured('seal burst pressure', launcher.sealBurstPressure, 'pressure', 'hPa'),
    ...measured('start position', launcher.startPosition, 'length', 'mm'),
    ...measured('discharge coefficient of the gap', launcher.gapDischarge, 'count', ''),
    ...measured('entrance loss', launcher.entranceLoss, 'count', ''),
    ...measured('wall friction', launcher.wallFriction, 'count', ''),
    ...measured('friction of the ball, N', launcher.ballFriction, 'count', ''),
  ];
}

/** How the shot was reduced, a setting a line. */
export function settings(shot: Shot): readonly { readonly name: string; readonly text: string }[] {
  const { timing, edits, fit, seals } = shot;
  const lost = timing.droppedFrames.reduce((sum, { count }) => sum + count, 0);
  const told = [
    [
      'Clock',
      timing.source === 'recordingRate'
        ? 'from the recording rate'
        : 'from the timestamps in the footage',
    ],
    ['Lost frames stated', lost === 0 ? 'none' : formatCount(lost)],
    ['Motion', modelWords(fit.model)],
    ['Frames that do not fit', fit.robust ? 'count for less' : 'count in full'],
    ['Coverage of the intervals', percent(shot.coverage)],
    ['Muzzle seal', seals?.muzzle == null ? 'none in view' : burstWords(seals.muzzle.burstBetween)],
    ['Frames rejected by hand', framesText(edits.rejectedFrames)],
    ['Centres placed by hand', framesText(edits.manualPoints.map(({ frame }) => frame))],
    ['Ball shown by hand', framesText(edits.seeds.map(({ frame }) => frame))],
    ['Setup', shot.setupId ?? 'none named'],
    ['Seed of the random numbers', String(shot.seed)],
  ] as const;
  return told.map(([name, value]) => ({ name, text: value }));
}

const burstWords = (between: readonly [number, number] | null): string =>
  between === null
    ? 'burst found on the film'
    : `burst set by hand between frames ${between[0]} and ${between[1]}`;

const framesText = (frames: readonly number[]): string =>
  frames.length === 0 ? 'none' : [...frames].sort((a, b) => a - b).join(', ');
