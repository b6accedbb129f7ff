import { airDensity } from '../core/air';
import type { Estimate } from '../core/estimate';
import { ExitframeError } from '../core/reason';
import type { AirSource, SharedInputs } from '../exit/types';
import { viewCauses } from '../geometry/viewCauses';
import type { Shot } from '../shot/schema';
import { effects } from '../uncertainty/propagation';
import { alongImage, type Scene } from './scene';
import type { Travel } from './travelAxis';

/**
 * The inputs that all points of a shot share, with what their uncertainties are made of. What lens and plane are not
 * known to moves each point by an amount of its own: see `layOut`.
 */
export function sharedInputs(
  shot: Shot,
  scene: Scene,
  metresPerPixel: number,
  { cosineU }: Pick<Travel, 'cosineU'>,
): SharedInputs {
  const { clock, scale, muzzle } = scene;
  return {
    metresPerPixel,
    scaleSources: [
      ...scale.sources.filter(({ throughView }) => !throughView),
      { source: 'direction of the flight', type: 'A', u: cosineU, dof: null },
    ],
    shiftSources: viewCauses(shot.scale).map(({ source, u, unit }) => ({ source, u, unit })),
    clockSources: [
      {
        ...(shot.timing.source === 'recordingRate'
          ? { source: 'recording rate', stated: ofRate(shot.timing.recordingRate) }
          : { source: "the file's time stamps", spread: 'rectangular' }),
        type: 'B',
        u: clock.rateRelativeU,
        dof: null,
      },
    ],
    lineTime: clock.lineTime,
    muzzleU: muzzle.u * alongImage(scene),
    ballDiameter: shot.ball.diameter,
    ballMass: shot.ball.mass,
    ...airOf(shot.air),
    airTemperature: shot.air.temperature.value,
  };
}

/** A higher rate shortens every interval. */
const ofRate = (rate: Estimate | null) =>
  rate === null ? null : { unit: '1/s', share: -1 / rate.value };

/** Air density with what its uncertainty is made of: one standard uncertainty of each reading up and down. */
function airOf(air: Shot['air']): { airDensity: Estimate; airSources: readonly AirSource[] } {
  const { temperature, pressure, humidity } = air;
  const model = ([t = 0, p = 0, h = 0]: readonly number[]): readonly number[] => [
    airDensity(t, p, Math.min(1, Math.max(0, h))),
  ];
  const [value = 0] = model([temperature.value, pressure.value, humidity.value]);
  const moved = effects(model, [temperature, pressure, humidity]).map(([by = 0]) => by);
  const density = { value, u: Math.hypot(...moved) };
  if (!(density.value > 0 && density.u < density.value)) {
    throw new ExitframeError(
      'airImplausible',
      `Air of ${temperature.value} K and ${pressure.value} Pa, known to ${temperature.u} K and ${pressure.u} Pa, has no density that could be reckoned with.`,
      'Check temperature (kelvin), pressure (pascal) and humidity (0 to 1) of the air, and their uncertainties.',
      {
        values: {
          ...{ temperature: `${temperature.value}`, temperatureU: `${temperature.u}` },
          ...{ pressure: `${pressure.value}`, pressureU: `${pressure.u}` },
        },
      },
    );
  }
  const readings = [
    { source: 'air temperature', u: temperature.u, unit: 'K' },
    { source: 'air pressure', u: pressure.u, unit: 'Pa' },
    { source: 'air humidity', u: humidity.u, unit: '1' },
  ];
  return {
    airDensity: density,
    airSources: readings.map((reading, i) => ({ ...reading, share: (moved[i] as number) / value })),
  };
}
