import { orUnavailable, type Quantity } from '../core/estimate';
import { failure, type Outcome, type ReasonValues, success } from '../core/reason';
import type { FlightReport } from '../shot/result';
import { responses } from './budget';
import { chooseModels } from './choice';
import { WIDE_DRAG } from './drag';
import { distanceOf, prepareFlight } from './flight';
import { DRAG, V0 } from './motion';
import { type Fitted, quantityRead, type Reading, type ReadOff, read, widened } from './reading';

type Readings = Pick<
  FlightReport,
  'kineticEnergy' | 'momentum' | 'deceleration' | 'dragCoefficient'
>;

/** Less well than this the film does not tell a drag coefficient: that much is known of any ball without it. */
const WORST_COEFFICIENT_U = WIDE_DRAG.u;

const momentumOf: ReadOff = (theta, _candidate, { mass }) => mass * (theta[V0] as number);
/** Of the flight; what spins in it is left out. */
const energyOf: ReadOff = (theta, _candidate, { mass }) => (mass * (theta[V0] as number) ** 2) / 2;
const decelerationOf: ReadOff = (theta) => (theta[DRAG] as number) * (theta[V0] as number) ** 2;
/** Cd = 2 m k / (density * cross-section). */
const coefficientOf: ReadOff = (theta, _candidate, { mass, diameter, density }) =>
  (8 * mass * (theta[DRAG] as number)) / (density * Math.PI * diameter ** 2);

/** Energy and momentum at the muzzle plane, drag just past the muzzle zone's reach. */
export function flightReadings(fitted: Fitted, coverage: number): Readings {
  const { mass } = fitted.nominal;
  const momentum = read(fitted, momentumOf);
  const unmodelled = mass * fitted.unmodelled;
  const drag = dragSeen(fitted, coverage);
  return {
    momentum: quantityRead(widened(momentum, unmodelled), coverage),
    kineticEnergy: quantityRead(
      widened(read(fitted, energyOf), (unmodelled * momentum.value) / mass),
      coverage,
    ),
    deceleration: orUnavailable(drag, ({ deceleration }) => quantityRead(deceleration, coverage)),
    dragCoefficient: orUnavailable(drag, ({ coefficient }) => coefficient),
  };
}

/**
 * Drag as the film alone tells it: quadratic drag with its constant left free, the loss in the muzzle zone fitted
 * beside it and so kept out of it. What is known of drag beforehand does not enter.
 */
function dragSeen(
  { flight, nominal, shared }: Fitted,
  coverage: number,
): Outcome<{ readonly deceleration: Reading; readonly coefficient: Quantity }> {
  const isPast = flight.points.map((point) => distanceOf(point, nominal) >= 0);
  const past = flight.points.filter((_, i) => isPast[i]);
  const free = prepareFlight(
    past,
    nominal,
    flight.weights.filter((_, i) => isPast[i]),
  );
  const choice = chooseModels('quadraticDrag', free, nominal);
  const moved =
    choice &&
    responses(
      choice.members,
      nominal,
      shared.map(({ input }) => input),
    );
  if (choice === null || moved === null) {
    return notSeen(`${past.length} frames do not tell drag and the loss at the muzzle apart.`, {
      form: 'frames',
      frames: past.length,
    });
  }
  const fitted: Fitted = { choice, flight: free, nominal, shared: moved, unmodelled: 0 };
  const coefficient = quantityRead(read(fitted, coefficientOf), coverage);
  if (!(coefficient.u < WORST_COEFFICIENT_U)) {
    const u = coefficient.u.toPrecision(1);
    return notSeen(
      `The film tells the drag coefficient to no better than ${u}; that much is known of any ball beforehand.`,
      { form: 'coefficient', u },
    );
  }
  if (coefficient.interval[1] < 0) {
    return failure(
      'dragNegative',
      'The fitted flight speeds up after the exit, so it tells no drag.',
      'Check scale, lens and clock, or leave frames near the edge of the picture out.',
    );
  }
  return success({ deceleration: read(fitted, decelerationOf), coefficient });
}

const notSeen = (message: string, values: ReasonValues): Outcome<never> =>
  failure(
    'dragNotSeen',
    message,
    'Film a longer stretch of the flight, or with more frames; the exit velocity counts what is not known of drag.',
    values,
  );
