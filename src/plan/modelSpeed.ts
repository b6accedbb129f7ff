import type { Quantity } from '../core/estimate';
import { type Outcome, success } from '../core/reason';
import type { StatedLauncher } from '../launch/fromShot';
import { MODELS } from '../launch/models';
import { predict } from '../launch/predict';
import type { ModelName } from '../shot/planning';

/** The exit speed that a launch model expects, m/s, with what the launcher's numbers leave open. Throws `badLauncher`. */
export function modelSpeed(
  {
    model,
    launcher,
    uncertainty,
    coverage,
  }: StatedLauncher & { readonly model: ModelName; readonly coverage: number },
  onProgress?: (share: number) => void,
): Outcome<Quantity> {
  const { run, varied } = MODELS[model];
  const told = predict(run, launcher, uncertainty, {
    ...{ coverage, varied },
    ...(onProgress === undefined ? {} : { onProgress }),
  });
  return told.ok ? success(told.value.speed.quantity) : told;
}
