import type { Gas } from './gas';

/** Flux per area through a moving face: kg/(s m^2), Pa, W/m^2. */
export interface Flux {
  mass: number;
  momentum: number;
  energy: number;
}

/**
 * Flux of the Euler equations through a face that moves at `faceSpeed`, between two states (density, velocity,
 * pressure): HLLC (Toro, Spruce and Speares, Shock Waves 4 (1994) 25) with the wave speeds of Einfeldt (SIAM J. Numer.
 * Anal. 25 (1988) 294), written for a moving face as F - w U. A contact that moves with the face passes no mass.
 */
export function hllc(
  { gamma }: Gas,
  rhoL: number,
  uL: number,
  pL: number,
  rhoR: number,
  uR: number,
  pR: number,
  faceSpeed: number,
  out: Flux,
): void {
  const cL = Math.sqrt((gamma * pL) / rhoL);
  const cR = Math.sqrt((gamma * pR) / rhoR);
  const energyL = pL / (gamma - 1) + 0.5 * rhoL * uL * uL;
  const energyR = pR / (gamma - 1) + 0.5 * rhoR * uR * uR;
  // Roe's average of speed and enthalpy.
  const rootL = Math.sqrt(rhoL);
  const rootR = Math.sqrt(rhoR);
  const share = rootL / (rootL + rootR);
  const u = share * uL + (1 - share) * uR;
  const enthalpy = (share * (energyL + pL)) / rhoL + ((1 - share) * (energyR + pR)) / rhoR;
  const c = Math.sqrt(Math.max(0, (gamma - 1) * (enthalpy - 0.5 * u * u)));
  const slowest = Math.min(uL - cL, u - c);
  const fastest = Math.max(uR + cR, u + c);
  const massL = rhoL * (slowest - uL);
  const massR = rhoR * (fastest - uR);
  const contact = (pR - pL + massL * uL - massR * uR) / (massL - massR);
  const left = faceSpeed <= contact;
  const rho = left ? rhoL : rhoR;
  const v = left ? uL : uR;
  const p = left ? pL : pR;
  const energy = left ? energyL : energyR;
  const outer = left ? slowest : fastest;
  let density = rho;
  let momentum = rho * v;
  let total = energy;
  let fluxMass = momentum;
  let fluxMomentum = momentum * v + p;
  let fluxEnergy = v * (energy + p);
  if (left ? faceSpeed > slowest : faceSpeed < fastest) {
    const squeezed = (rho * (outer - v)) / (outer - contact);
    const inside = squeezed * (energy / rho + (contact - v) * (contact + p / (rho * (outer - v))));
    fluxMass += outer * (squeezed - density);
    fluxMomentum += outer * (squeezed * contact - momentum);
    fluxEnergy += outer * (inside - total);
    density = squeezed;
    momentum = squeezed * contact;
    total = inside;
  }
  out.mass = fluxMass - faceSpeed * density;
  out.momentum = fluxMomentum - faceSpeed * momentum;
  out.energy = fluxEnergy - faceSpeed * total;
}
