import type { Quantity } from '../core/estimate';
import type { ModelName } from '../shot/planning';
import type { StatedLauncher } from './fromShot';
import { MODELS } from './models';
import { predict } from './predict';
import { followed } from './unfollowed';

/** The exit speed, m/s, with one number of the launcher at `at`, SI, all else as stated. */
export interface CurvePoint {
  readonly at: number;
  readonly speed: Quantity;
}

export interface CurveQuestion extends StatedLauncher {
  readonly model: ModelName;
  readonly what: 'barrelLength' | 'residualPressure';
  /** SI */
  readonly values: readonly number[];
  readonly coverage: number;
}

/**
 * Exit speeds against one number of the launcher, each with the uncertainty that the other inputs give it: what is
 * varied is taken as exact. Values that no launcher can have, that the model cannot follow, or by which the ball does not leave, are left out.
 * `onProgress` gets 0..1.
 */
export function speedCurve(
  { model, launcher, uncertainty, what, values, coverage }: CurveQuestion,
  onProgress?: (share: number) => void,
): CurvePoint[] {
  const { run, varied } = MODELS[model];
  const others = { ...uncertainty, [what]: 0 };
  const { startPosition, ballDiameter, air } = launcher;
  const possible = (at: number) =>
    what === 'barrelLength' ? at > startPosition + ballDiameter / 2 : at >= 0 && at < air.pressure;
  return values.flatMap((at, i) => {
    const there = possible(at)
      ? followed(() => predict(run, { ...launcher, [what]: at }, others, { coverage, varied }))
      : null;
    onProgress?.((i + 1) / values.length);
    return there?.ok && there.value.ok ? [{ at, speed: there.value.value.speed.quantity }] : [];
  });
}
