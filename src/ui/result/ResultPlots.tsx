import { instantsOf } from '../../app/flightPicture';
import { bandCoverage, residualsOf, speedsBetween } from '../../app/plotData';
import type { Reduction } from '../../app/resultTypes';
import { timelineOf } from '../../app/timeline';
import { isAvailable } from '../../core/estimate';
import { BudgetChart } from '../../plots/BudgetChart';
import { PositionPlot } from '../../plots/PositionPlot';
import { ResidualPlot } from '../../plots/ResidualPlot';
import { SealPlot } from '../../plots/SealPlot';
import { Timeline } from '../../plots/Timeline';
import { VelocityPlot } from '../../plots/VelocityPlot';
import { useDesk } from '../desk';
import { AdviceList } from './AdviceList';
import { speedShown } from './words';

/** How far past the muzzle gas behind the ball may still act on it, as the fit assumes; ball diameters. */
const MUZZLE_ZONE_DIAMETERS = 3;

/** Events, position, residuals, speed, the seal's bulge and the budget, drawn. */
export function ResultPlots({ reduction }: { readonly reduction: Reduction }) {
  const desk = useDesk();
  const step = desk.step.value;
  const speed = speedShown(desk.preferences.speedUnit.value);
  const currentFrame = desk.session.player.current.value;
  const { result, curve, seal } = reduction;
  const band = bandCoverage(result);
  const instants = instantsOf(result);
  const seen = result.positions.some((one) => one.s !== null);
  const timeline = timelineOf(result);
  const residuals = residualsOf(result, curve);
  const diameter = desk.session.shots.draft.value?.ball.diameter.value ?? null;
  const { exitVelocity, exitTime } = result;
  return (
    <div class="plots">
      {step === 'result' && timeline !== null && (
        <div class="plots-wide">
          <Timeline {...timeline} />
        </div>
      )}
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
        <SealPlot
          times={seal.times}
          front={seal.front}
          frontU={seal.frontU}
          instants={instants}
          posterior={'posterior' in result.sealBurst ? result.sealBurst.posterior : null}
          bounds={'bounds' in result.sealBurst ? result.sealBurst.bounds : null}
        />
      )}
      {step === 'result' && isAvailable(exitVelocity) && (
        <div class="plots-wide plots">
          <BudgetChart
            entries={result.budget.exitVelocity}
            combined={exitVelocity.u}
            unit={speed}
          />
          <AdviceList advice={result.budget.advice} />
        </div>
      )}
    </div>
  );
}
