import { type Spread, usualSpread } from '../uncertainty/draw';
import type { Setting } from './flight';
import type { AirSource, RelativeSource, SharedInputs, ShiftSource } from './types';

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
  /** Moves this input of the setting by `by`, in `unit`, in place. */
  readonly move: (setting: Drawn, by: number) => void;
}

/** A setting to be overwritten, trial after trial. */
export type Drawn = { -readonly [K in Exclude<keyof Setting, 'shifts'>]: Setting[K] } & {
  readonly shifts: number[];
};

/** A copy of a setting to be moved. */
export const drawnFrom = (setting: Setting): Drawn => ({ ...setting, shifts: [...setting.shifts] });

/** `drawn` set back to `setting`, without a new object. */
export function restore(drawn: Drawn, setting: Setting): void {
  drawn.metresPerPixel = setting.metresPerPixel;
  drawn.clockStretch = setting.clockStretch;
  drawn.lineTime = setting.lineTime;
  drawn.muzzle = setting.muzzle;
  drawn.diameter = setting.diameter;
  drawn.mass = setting.mass;
  drawn.density = setting.density;
  for (let k = 0; k < drawn.shifts.length; k++) drawn.shifts[k] = setting.shifts[k] as number;
}

/** The setting with an input moved by `by`, in its unit. */
export function shifted(setting: Setting, input: SharedInput, by: number): Setting {
  const moved = drawnFrom(setting);
  input.move(moved, by);
  return moved;
}

type Key = Exclude<keyof Setting, 'shifts'>;

const relative =
  (key: Key, each: number) =>
  (setting: Drawn, by: number): void => {
    setting[key] *= 1 + each * by;
  };
const absolute =
  (key: Key) =>
  (setting: Drawn, by: number): void => {
    setting[key] += by;
  };

const shift = ({ source, u, unit, spread }: ShiftSource, index: number): SharedInput => ({
  source,
  type: 'B',
  u,
  unit,
  dof: null,
  spread: spread ?? 'normal',
  move: (setting, by) => {
    setting.shifts[index] = (setting.shifts[index] as number) + by / u;
  },
});

const air = ({ source, u, unit, share }: AirSource): SharedInput => ({
  source,
  type: 'B',
  u,
  unit,
  dof: null,
  spread: 'normal',
  move: (setting, by) => {
    setting.density *= 1 + (share * by) / u;
  },
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
    move: absolute(key),
  });
  const share =
    (key: Key) =>
    ({ source, type, u, dof, spread, stated }: RelativeSource): SharedInput => {
      const { unit, share: each } = stated ?? { unit: '1', share: 1 };
      return {
        source,
        type,
        u: u / Math.abs(each),
        unit,
        dof,
        spread: spread ?? usualSpread(dof),
        move: relative(key, each),
      };
    };
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
