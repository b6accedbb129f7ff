import { instantsOf } from '../../app/flightPicture';
import { bandCoverage, residualsOf, speedsBetween } from '../../app/plotData';
import type { Reduction } from '../../app/resultTypes';
import { timelineOf } from '../../app/timeline';
import { isAvailable } from '../../core/estimate';
import type { TimelineEvent } from '../../core/timeline';
import { BudgetChart } from '../../plots/BudgetChart';
import { PositionPlot } from '../../plots/PositionPlot';
import { ResidualPlot } from '../../plots/ResidualPlot';
import { SealPlot } from '../../plots/SealPlot';
import { Timeline } from '../../plots/Timeline';
import { VelocityPlot } from '../../plots/VelocityPlot';
import { t } from '../../text/text';
import { speedShown } from './words';

/** How far past the muzzle gas behind the ball may still act on it, as the fit assumes; ball diameters. */
const MUZZLE_ZONE_DIAMETERS = 3;

interface ResultFigureProps {
  readonly name: PlotName;
  readonly reduction: Reduction;
  /** Of the ball, m; null: unknown, the muzzle zone is not drawn. */
  readonly diameter: number | null;
  readonly speedUnit: string;
  readonly currentFrame?: number;
  onPickFrame?(frame: number): void;
}

export type PlotName = 'events' | 'position' | 'residuals' | 'velocity' | 'seal' | 'budget';

/** One plot of a reduction, by its name; nothing where there is nothing to draw. */
export function ResultFigure(props: ResultFigureProps) {
  switch (props.name) {
    case 'events':
      return <Events {...props} />;
    case 'position':
      return <Positions {...props} />;
    case 'residuals':
      return <Residuals {...props} />;
    case 'velocity':
      return <Velocity {...props} />;
    case 'seal':
      return <Bulge {...props} />;
    case 'budget':
      return <Budget {...props} />;
  }
}

/** A moment with what it is called. */
const labelled = <Moment extends Pick<TimelineEvent, 'kind'>>(moment: Moment) => ({
  ...moment,
  label: t(`plots.event.${moment.kind}`),
});

/** What plots are told of the frame shown, left out where nothing is. */
const picking = ({ currentFrame, onPickFrame }: ResultFigureProps) => ({
  ...(currentFrame === undefined ? {} : { currentFrame }),
  ...(onPickFrame === undefined ? {} : { onPickFrame }),
});

function Events({ reduction: { result } }: ResultFigureProps) {
  const timeline = timelineOf(result);
  return timeline === null ? null : (
    <Timeline {...timeline} events={timeline.events.map(labelled)} />
  );
}

function Positions(props: ResultFigureProps) {
  const { reduction, diameter } = props;
  const { result, curve } = reduction;
  if (!result.positions.some((one) => one.s !== null)) return null;
  return (
    <PositionPlot
      positions={result.positions}
      curve={
        curve === null
          ? null
          : { times: curve.times, values: curve.s, u: curve.sU, ...bandCoverage(result) }
      }
      instants={instantsOf(result).map(labelled)}
      zone={diameter === null ? null : { from: 0, to: MUZZLE_ZONE_DIAMETERS * diameter }}
      {...picking(props)}
    />
  );
}

function Residuals(props: ResultFigureProps) {
  const points = residualsOf(props.reduction.result, props.reduction.curve);
  return points.length === 0 ? null : <ResidualPlot points={points} {...picking(props)} />;
}

function Velocity({ reduction: { result, curve }, speedUnit }: ResultFigureProps) {
  if (curve === null) return null;
  const { exitVelocity, exitTime } = result;
  return (
    <VelocityPlot
      unit={speedShown(speedUnit)}
      curve={{ times: curve.times, values: curve.v, u: curve.vU, ...bandCoverage(result) }}
      differences={speedsBetween(result.positions)}
      exit={
        isAvailable(exitVelocity) && isAvailable(exitTime)
          ? { time: exitTime.value, value: exitVelocity.value, interval: exitVelocity.interval }
          : null
      }
    />
  );
}

function Bulge({ reduction: { result, seal } }: ResultFigureProps) {
  if (seal === null) return null;
  const { sealBurst } = result;
  return (
    <SealPlot
      times={seal.times}
      front={seal.front}
      frontU={seal.frontU}
      instants={instantsOf(result).map(labelled)}
      posterior={'posterior' in sealBurst ? sealBurst.posterior : null}
      bounds={'bounds' in sealBurst ? sealBurst.bounds : null}
    />
  );
}

function Budget({ reduction: { result }, speedUnit }: ResultFigureProps) {
  const { exitVelocity } = result;
  if (!isAvailable(exitVelocity)) return null;
  return (
    <BudgetChart
      entries={result.budget.exitVelocity}
      combined={exitVelocity.u}
      unit={speedShown(speedUnit)}
    />
  );
}
