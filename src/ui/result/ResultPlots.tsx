import type { Reduction } from '../../app/resultTypes';
import { timelineOf } from '../../app/timeline';
import { isAvailable } from '../../core/estimate';
import { useDesk } from '../desk';
import { Later } from '../Later';
import { AdviceList } from './AdviceList';
import { type PlotName, ResultFigure } from './ResultFigure';

/** Events, position, residuals, speed, the seal's bulge and the budget, drawn: those of the step looked at. */
export function ResultPlots({ reduction }: { readonly reduction: Reduction }) {
  const desk = useDesk();
  const step = desk.step.value;
  const { result } = reduction;
  const shared = {
    reduction,
    diameter: desk.session.shots.draft.value?.ball.diameter.value ?? null,
    speedUnit: desk.preferences.speedUnit.value,
    currentFrame: desk.session.player.current.value,
    onPickFrame: desk.pick,
  };
  const plots: readonly (PlotName | false)[] = [
    step !== 'seal' && 'position',
    step !== 'seal' && 'residuals',
    step === 'result' && 'velocity',
    step !== 'ball' && 'seal',
  ];
  return (
    <div class="plots">
      {step === 'result' && timelineOf(result) !== null && (
        <div class="plots-wide">
          <ResultFigure name="events" {...shared} />
        </div>
      )}
      {plots.map(
        (name) =>
          name && (
            <Later key={name}>
              <ResultFigure name={name} {...shared} />
            </Later>
          ),
      )}
      {step === 'result' && isAvailable(result.exitVelocity) && (
        <div class="plots-wide plots">
          <ResultFigure name="budget" {...shared} />
          <AdviceList advice={result.budget.advice} />
        </div>
      )}
    </div>
  );
}
