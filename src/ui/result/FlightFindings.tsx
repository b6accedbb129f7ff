import type { Result } from '../../app/resultTypes';
import { isAvailable, type Reported } from '../../core/estimate';
import { useDesk } from '../desk';
import { ReasonText } from '../shell/Notices';
import { Finding, sharedReason } from './Reading';

/** What is read off the flight, and at the target where one is stated. */
export function FlightFindings({ flight }: { readonly flight: Result['flight'] }) {
  const { elevation, kineticEnergy, momentum, boreAcceleration, target } = flight;
  const { deceleration, dragCoefficient } = flight;
  const reason = sharedReason([elevation, kineticEnergy, momentum, boreAcceleration, deceleration]);
  return (
    <>
      {reason !== null ? (
        <Together name="Direction, energy, acceleration" mark="flight" reason={reason} />
      ) : (
        <>
          <Finding
            name="Direction at the exit"
            mark="elevation"
            reported={elevation}
            kind="angle"
            unit="°"
          >
            {upOrDown(elevation)}
          </Finding>
          <Finding
            name="Kinetic energy at the exit"
            mark="kinetic-energy"
            reported={kineticEnergy}
            kind="energy"
            unit="J"
          />
          <Finding
            name="Momentum at the exit"
            mark="momentum"
            reported={momentum}
            kind="momentum"
            unit="kg m/s"
          />
          <Finding
            name="Mean acceleration in the bore"
            mark="bore-acceleration"
            reported={boreAcceleration}
            kind="acceleration"
            unit="m/s²"
          >
            {' '}
            over the last three ball diameters of the bore
          </Finding>
          <Finding
            name="Deceleration after the exit"
            mark="deceleration"
            reported={deceleration}
            kind="acceleration"
            unit="m/s²"
          />
          <Finding
            name="Drag coefficient it implies"
            mark="drag-coefficient"
            reported={dragCoefficient}
            kind="count"
            unit=""
          />
        </>
      )}
      {target !== null && <TargetFindings target={target} />}
    </>
  );
}

const upOrDown = (elevation: Reported): string => {
  if (!isAvailable(elevation)) return '';
  const [low, high] = elevation.interval;
  if (low <= 0 && high >= 0) return ": level with the picture's rows within what is known";
  return elevation.value > 0 ? ": upwards from the picture's rows" : ': downwards';
};

function TargetFindings({ target }: { readonly target: NonNullable<Result['flight']['target']> }) {
  const speed = useDesk().preferences.speedUnit.value;
  const { time, speedBefore, speedAfter, energyGivenUp } = target;
  const reason = sharedReason([time, speedBefore, speedAfter, energyGivenUp]);
  if (reason !== null) return <Together name="At the target" mark="target" reason={reason} />;
  return (
    <>
      <Finding name="At the target at" mark="target-time" reported={time} kind="time" unit="ms" />
      <Finding
        name="Speed at the target"
        mark="target-speed"
        reported={speedBefore}
        kind="speed"
        unit={speed}
      />
      <Finding
        name="Speed past the target"
        mark="target-speed-after"
        reported={speedAfter}
        kind="speed"
        unit={speed}
      />
      <Finding
        name="Energy given up to the target"
        mark="target-energy"
        reported={energyGivenUp}
        kind="energy"
        unit="J"
      />
    </>
  );
}

/** One reason for several readings. */
function Together(props: {
  readonly name: string;
  readonly mark: string;
  readonly reason: NonNullable<ReturnType<typeof sharedReason>>;
}) {
  return (
    <div>
      <dt>{props.name}</dt>
      <dd data-role={props.mark} class="muted">
        <ReasonText reason={props.reason} />
      </dd>
    </div>
  );
}
