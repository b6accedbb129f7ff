import { instantsOf } from '../../app/flightPicture';
import { bandCoverage, residualsOf, speedsBetween } from '../../app/plotData';
import type { Reduction } from '../../app/resultTypes';
import { isAvailable } from '../../core/estimate';
import { BudgetChart } from '../../plots/BudgetChart';
import { PositionPlot } from '../../plots/PositionPlot';
import { ResidualPlot } from '../../plots/ResidualPlot';
import { SealPlot } from '../../plots/SealPlot';
import { VelocityPlot } from '../../plots/VelocityPlot';
import { useDesk } from '../desk';
import { speedShown } from './words';

/** How far past the muzzle gas behind the ball may still act on it, as the fit assumes; ball diameters. */
const MUZZLE_ZONE_DIAMETERS = 3;

/** Position, residuals, speed, the seal's bulge and the budget, drawn. */
export function ResultPlots({ reduction }: { readonly reduction: Reduction }) {
  const desk = useDesk();
  const step = desk.step.value;
  const speed = speedShown(desk.preferences.speedUnit.value);
  const currentFrame = desk.session.player.current.value;
  const { result, curve, seal } = reduction;
  const band = bandCoverage(result);
  const instants = instantsOf(result);
  const seen = result.positions.some((one) => one.s !== null);
  const residuals = residualsOf(result);
  const diameter = desk.session.shots.draft.value?.ball.diameter.value ?? null;
  const { exitVelocity, exitTime } = result;
  return (
    <div class="plots">
      {step !== 'seal' && seen && (
        <>
          <PositionPlot
            positions={result.positions}
            curve={
              curve === null ? null : { times: curve.times, values: curve.s, u: curve.sU, ...band }
            }
            instants={instants}
            zone={diameter === null ? null : { from: 0, to: MUZZLE_ZONE_DIAMETERS * diameter }}
            currentFrame={currentFrame}
            onPickFrame={desk.pick}
          />
          {residuals.length > 0 && (
            <ResidualPlot points={residuals} currentFrame={currentFrame} onPickFrame={desk.pick} />
          )}
        </>
      )}
      {step === 'result' && curve !== null && (
        <VelocityPlot
          unit={speed}
          curve={{ times: curve.times, values: curve.v, u: curve.vU, ...band }}
          differences={speedsBetween(result.positions)}
          exit={
            isAvailable(exitVelocity) && isAvailable(exitTime)
              ? { time: exitTime.value, value: exitVelocity.value, interval: exitVelocity.interval }
              : null
          }
        />
      )}
      {step !== 'ball' && seal !== null && (
        <SealPlot times={seal.times} front={seal.front} frontU={seal.frontU} instants={instants} />
      )}
      {step === 'result' && isAvailable(exitVelocity) && (
        <BudgetChart entries={result.budget.exitVelocity} combined={exitVelocity.u} unit={speed} />
      )}
    </div>
  );
}
