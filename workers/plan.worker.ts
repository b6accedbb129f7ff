import { judgePlan } from '../src/plan/judge';
import { modelSpeed } from '../src/plan/modelSpeed';
import { sweep } from '../src/plan/sweep';
import type { PlanApi } from '../src/protocol/plan';
import { serve } from './serve';

const api: PlanApi = {
  judge: async (plan) => judgePlan(plan),
  sweep: async (question, onShare) => sweep(question, onShare),
  speed: async (question, onShare) => modelSpeed(question, onShare),
};

serve(api);
