import type { Edit } from '../../app/history';
import type { Plan, PlanningInputs } from '../../app/resultTypes';
import { t } from '../../text/text';
import { useDesk } from '../desk';

/** Changes of the plan, each one step to undo, called by what it changes. */
export function usePlanEdits() {
  const { planning } = useDesk().session;
  const named = (what: string): Edit => ({ label: t('edits.plan', { what }) });
  const namedBy = (next: object): Edit => named(Object.keys(next)[0] ?? 'other');
  return {
    named,
    plan: (next: Partial<Plan>) => planning.change(next, namedBy(next)),
    inputs: (next: Partial<PlanningInputs>) => planning.edit(next, namedBy(next)),
  };
}
