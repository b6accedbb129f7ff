/**
 * Density of moist air, CIPM-2007 (Picard, Davis, Glaeser, Fujii, Metrologia 45 (2008) 149).
 * Stated for 600 to 1100 hPa and 15 to 27 degrees Celsius; used somewhat outside with growing error.
 * `temperature` K, `pressure` Pa, `humidity` 0..1; returns kg/m^3.
 */
export function airDensity(temperature: number, pressure: number, humidity: number): number {
  const celsius = temperature - 273.15;
  const saturation = Math.exp(
    1.2378847e-5 * temperature ** 2 -
      1.9121316e-2 * temperature +
      33.93711047 -
      6.3431645e3 / temperature,
  );
  const enhancement = 1.00062 + 3.14e-8 * pressure + 5.6e-7 * celsius ** 2;
  const vapour = (humidity * enhancement * saturation) / pressure;
  const ratio = pressure / temperature;
  const compressibility =
    1 -
    ratio *
      (1.58123e-6 -
        2.9331e-8 * celsius +
        1.1043e-10 * celsius ** 2 +
        (5.707e-6 - 2.051e-8 * celsius) * vapour +
        (1.9898e-4 - 2.376e-6 * celsius) * vapour ** 2) +
    ratio ** 2 * (1.83e-11 - 0.765e-8 * vapour ** 2);
  const dryMolarMass = 28.96546e-3;
  const waterMolarMass = 18.01528e-3;
  const gasConstant = 8.314472;
  return (
    ((pressure * dryMolarMass) / (compressibility * gasConstant * temperature)) *
    (1 - vapour * (1 - waterMolarMass / dryMolarMass))
  );
}

/** Viscosity of air, Pa s, at `temperature` K (Sutherland's formula as in ISO 2533:1975). */
export const airViscosity = (temperature: number): number =>
  (1.458e-6 * temperature ** 1.5) / (temperature + 110.4);

/** Speed of sound in dry air, m/s, at `temperature` K: sqrt(1.4 R T), R = 287.05287 J/(kg K) (ISO 2533:1975). */
export const soundSpeed = (temperature: number): number => Math.sqrt(1.4 * 287.05287 * temperature);

/**
 * Speed of sound in moist air, m/s: that of the dry gas at this temperature, with the density of the mixture (CIPM-2007)
 * and the ratio of specific heats of air with 7/2 R and water vapour with 4.04 R. Within 0.05 % of Cramer's formula
 * (J. Acoust. Soc. Am. 93 (1993) 2510), which gives + 0.35 % for saturated air at 20 degrees Celsius (from memory).
 */
export function moistSoundSpeed(temperature: number, pressure: number, humidity: number): number {
  const dry = airDensity(temperature, pressure, 0);
  const moist = airDensity(temperature, pressure, humidity);
  // Vapour weighs 0.622 of what air does: its share of the molecules shows in the density.
  const vapour = Math.max(0, 1 - moist / dry) / (1 - 0.622);
  const heat = 3.5 + 0.54 * vapour;
  return soundSpeed(temperature) * Math.sqrt((heat / (heat - 1) / 1.4) * (dry / moist));
}
