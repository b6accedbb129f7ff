import type { Light } from './scene';

/** Brightness of a matt ball at a place (u, v) of its disc in units of the radius; 1 where it is fully lit. */
export function brightness(light: Light): (u: number, v: number) => number {
  const { ambient, limb } = light;
  const lamp = 1 - ambient;
  const lx = lamp * Math.sin(light.tilt) * Math.cos(light.azimuth);
  const ly = lamp * Math.sin(light.tilt) * Math.sin(light.azimuth);
  const lz = lamp * Math.cos(light.tilt);
  return (u, v) => {
    const w = Math.sqrt(Math.max(0, 1 - u * u - v * v));
    // Lambert's law.
    return (ambient + Math.max(0, lx * u + ly * v + lz * w)) * (1 - limb * (1 - w));
  };
}

/** Its mean over the disc. */
export function meanBrightness(light: Light): number {
  const at = brightness(light);
  let sum = 0;
  let n = 0;
  for (let i = -40; i <= 40; i++) {
    for (let j = -40; j <= 40; j++) {
      if (i * i + j * j > 1600) continue;
      sum += at(i / 40, j / 40);
      n++;
    }
  }
  return sum / n;
}
