import type { ModelName } from '../../app/resultTypes';
import type { LookName } from '../../plots/looks';

interface ModelWords {
  readonly title: string;
  /** Its line in the plots. */
  readonly look: LookName;
  readonly assumes: string;
  readonly source: string;
}

export const MODEL_CARDS: Readonly<Record<ModelName, ModelWords>> = {
  constantForce: {
    title: 'Constant force',
    look: 'dots',
    assumes:
      'The pressure outside pushes on the ball however fast it goes, into a perfect vacuum. No air is set in motion, none leaks, nothing rubs, and nothing is ahead, outside the muzzle neither. Residual pressure, burst pressure and losses are not used; the seal opens when the ball touches it. It is always above what a launcher does.',
    source:
      'Textbook mechanics; given as the naive bound by Ayars and Buchholtz, Am. J. Phys. 72 (2004) 961, eq. 1 and 2.',
  },
  momentum: {
    title: 'Momentum of ball and air',
    look: 'dashes',
    assumes:
      'The air that follows the ball is picked up at once to its speed, at the density outside: it neither expands nor has waves. Added by their own terms: uniform air ahead squeezed without loss of heat, leak, loss at the entrance, frictions. Its ceiling, the root of pressure over density, belongs to the model and bounds nothing.',
    source: 'Ayars and Buchholtz, Am. J. Phys. 72 (2004) 961, with the terms named here added.',
  },
  gasDynamics: {
    title: 'Gas dynamics',
    look: 'solid',
    assumes:
      'The Euler equations in one dimension behind and ahead of the ball, which is a piston with a leaking gap: waves and shocks are followed. A perfect gas, alike over the bore; the rear seal gone at once; the muzzle seal a wall until its burst pressure is passed, then open at once; walls that take no heat; the ball loses nothing to what is left of the seal.',
    source:
      'Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed. 2009 (method); Seigel, AGARDograph 91 (1965) (the problem; from memory).',
  },
  expansion: {
    title: 'Expansion limit',
    look: 'dotDash',
    assumes:
      'At the ball, air expanded without loss to the ball’s speed, with no time for waves to run: what gas dynamics comes to for a heavy ball, and above it for a light one. Air ahead and leak as in the momentum model; entrance loss and wall friction are not used.',
    source:
      'Seigel, The Theory of High Speed Guns, AGARDograph 91 (1965), large chamber (from memory; algebra checked).',
  },
};

/** Verdicts as single words, for a table. */
export const VERDICT_WORDS = {
  agree: 'agree',
  questionable: 'may differ',
  differ: 'differ',
} as const;
