/** Standard acceleration of free fall, m/s^2 (3rd CGPM, 1901; exact). */
export const STANDARD_GRAVITY = 9.80665;

/** Force of the air on a ball that closes an evacuated bore, N: pressure (Pa) on the ball's cross-section (diameter, m). */
export const atmosphericForce = (pressure: number, diameter: number): number =>
  (pressure * Math.PI * diameter ** 2) / 4;

/** What that force would do to a free ball of this mass (kg) at first, m/s^2. */
export const initialAcceleration = (force: number, mass: number): number => force / mass;
