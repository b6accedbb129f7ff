import { airDensity } from '../core/air';
import type { Estimate } from '../core/estimate';
import { ExitframeError } from '../core/reason';
import type { SharedInputs } from '../exit/types';
import { viewCauses } from '../geometry/viewCauses';
import type { Shot } from '../shot/schema';
import { alongImage, type Scene } from './scene';

/**
 * The inputs that all points of a shot share, with what their uncertainties are made of. What lens and plane are not
 * known to moves each point by an amount of its own: see `layOut`.
 */
export function sharedInputs(shot: Shot, scene: Scene, metresPerPixel: number): SharedInputs {
  const { clock, scale, muzzle } = scene;
  return {
    metresPerPixel,
    scaleSources: scale.sources.filter(({ throughView }) => !throughView),
    shiftSources: viewCauses(shot.scale).map(({ source, u, unit }) => ({ source, u, unit })),
    clockSources: [
      {
        source:
          shot.timing.source === 'recordingRate' ? 'recording rate' : "the file's time stamps",
        type: 'B',
        u: clock.rateRelativeU,
        dof: null,
      },
    ],
    lineTime: clock.lineTime,
    muzzleU: muzzle.u * alongImage(scene),
    ballDiameter: shot.ball.diameter,
    ballMass: shot.ball.mass,
    airDensity: densityOf(shot.air),
    airTemperature: shot.air.temperature.value,
  };
}

/** Density with its uncertainty: first order, by central differences of one standard uncertainty (JCGM 100:2008, 5.1.3). */
function densityOf(air: Shot['air']): Estimate {
  const { temperature: t, pressure: p, humidity: h } = air;
  const half = (plus: number, minus: number) => (plus - minus) / 2;
  const humidityUp = Math.min(1, h.value + h.u);
  const humidityDown = Math.max(0, h.value - h.u);
  const density = {
    value: airDensity(t.value, p.value, h.value),
    u: Math.hypot(
      half(
        airDensity(t.value + t.u, p.value, h.value),
        airDensity(t.value - t.u, p.value, h.value),
      ),
      half(
        airDensity(t.value, p.value + p.u, h.value),
        airDensity(t.value, p.value - p.u, h.value),
      ),
      half(airDensity(t.value, p.value, humidityUp), airDensity(t.value, p.value, humidityDown)),
    ),
  };
  if (!(density.value > 0 && density.u < density.value)) {
    throw new ExitframeError(
      'airImplausible',
      `Air of ${t.value} K and ${p.value} Pa, known to ${t.u} K and ${p.u} Pa, has no density that could be reckoned with.`,
      'Check temperature (kelvin), pressure (pascal) and humidity (0 to 1) of the air, and their uncertainties.',
    );
  }
  return density;
}
