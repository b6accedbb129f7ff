import type { Outcome } from '../core/reason';
import type { Pixels, Seconds } from '../core/units';
import type { Plan } from '../shot/planning';
import type { Shot } from '../shot/schema';
import { checkPlan, type PlanCheck } from './checks';
import { type Expectation, expectShot } from './expect';
import { type Lighting, lightingAt } from './light';
import { ballRadius, metresPerPixel, plannedShot } from './plannedShot';

/** An exposure and the light it takes. */
export interface LightNeed {
  readonly exposure: Seconds;
  readonly blur: Pixels;
  /** Of the radius. */
  readonly blurShare: number;
  /** How many times the light of the picture that the contrast was read off. */
  readonly needed: number;
}

/** All that is told of one plan. */
export interface Judgement {
  readonly plan: Plan;
  readonly checks: readonly PlanCheck[];
  readonly told: Outcome<Expectation>;
  readonly lighting: Lighting;
  /** As planned, and for shorter blurs. */
  readonly lightNeeds: readonly LightNeed[];
  /** The shot file. */
  readonly shot: Outcome<Shot>;
}

/** Films drawn: their mean settles to a few per cent. */
const DRAWS = 16;
/** Blurs worth the light, shares of the radius. */
const BLURS = [0.5, 0.25, 0.1] as const;

/** What a plan should give, what stands against it, and what light it takes. */
export function judgePlan(plan: Plan): Judgement {
  const checks = checkPlan(plan);
  const [first] = checks;
  return {
    plan,
    checks,
    told: first?.blocks ? { ok: false, reason: first } : expectShot(plan, DRAWS),
    lighting: lightingAt(plan.picture.light, plan.camera.exposure.value),
    lightNeeds: lightNeeds(plan),
    shot: plannedShot(plan),
  };
}

function lightNeeds(plan: Plan): LightNeed[] {
  const { exposure } = plan.camera;
  const perSecond = plan.speed.value / metresPerPixel(plan);
  const radius = ballRadius(plan);
  const shorter = BLURS.map((share) => (share * radius) / perSecond).filter(
    (one) => one < exposure.value,
  );
  return [exposure.value, ...shorter].map((one) => ({
    exposure: one,
    blur: perSecond * one,
    blurShare: (perSecond * one) / radius,
    needed: lightingAt(plan.picture.light, one).needed,
  }));
}
