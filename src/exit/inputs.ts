import { type Spread, usualSpread } from '../uncertainty/draw';
import type { Setting } from './flight';
import type { AirSource, SharedInputs, ShiftSource } from './types';

/** One input every point shares: where it enters the setting and how well it is known. */
export interface SharedInput {
  readonly source: string;
  readonly type: 'A' | 'B';
  /** Standard uncertainty, in `unit`. */
  readonly u: number;
  readonly unit: string;
  readonly dof: number | null;
  /** What a trial draws it from. */
  readonly spread: Spread;
  /** The setting with this input moved by `by`, in `unit`. */
  readonly shifted: (setting: Setting, by: number) => Setting;
}

type Key = Exclude<keyof Setting, 'shifts'>;

const relative =
  (key: Key) =>
  (setting: Setting, by: number): Setting => ({ ...setting, [key]: setting[key] * (1 + by) });
const absolute =
  (key: Key) =>
  (setting: Setting, by: number): Setting => ({ ...setting, [key]: setting[key] + by });

const shift = ({ source, u, unit, spread }: ShiftSource, index: number): SharedInput => ({
  source,
  type: 'B',
  u,
  unit,
  dof: null,
  spread: spread ?? 'normal',
  shifted: (setting, by) => ({
    ...setting,
    shifts: setting.shifts.with(index, (setting.shifts[index] as number) + by / u),
  }),
});

const air = ({ source, u, unit, share }: AirSource): SharedInput => ({
  source,
  type: 'B',
  u,
  unit,
  dof: null,
  spread: 'normal',
  shifted: (setting, by) => ({ ...setting, density: setting.density * (1 + (share * by) / u) }),
});

/** Every shared input with an uncertainty. */
export function sharedInputs(shared: SharedInputs): SharedInput[] {
  const plain = (source: string, key: Key, u: number, unit: string): SharedInput => ({
    source,
    type: 'B',
    u,
    unit,
    dof: null,
    spread: 'normal',
    shifted: absolute(key),
  });
  const share =
    (key: Key) =>
    ({ source, type, u, dof, spread }: SharedInputs['scaleSources'][number]): SharedInput => ({
      source,
      type,
      u,
      unit: '1',
      dof,
      spread: spread ?? usualSpread(dof),
      shifted: relative(key),
    });
  return [
    ...shared.scaleSources.map(share('metresPerPixel')),
    ...shared.clockSources.map(share('clockStretch')),
    plain('time per line', 'lineTime', shared.lineTime.u, 's'),
    plain('place of the muzzle plane', 'muzzle', shared.muzzleU, 'px'),
    plain('ball diameter', 'diameter', shared.ballDiameter.u, 'm'),
    plain('ball mass', 'mass', shared.ballMass.u, 'kg'),
    ...(shared.airSources?.map(air) ?? [
      plain('air density', 'density', shared.airDensity.u, 'kg/m³'),
    ]),
    ...(shared.shiftSources ?? []).map(shift),
  ].filter(({ u }) => u > 0);
}
