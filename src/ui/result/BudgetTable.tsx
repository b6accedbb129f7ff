import type { Result } from '../../app/resultTypes';
import { burstBudget, velocityBudget } from '../../report/table';
import { useDesk } from '../desk';
import { ModelTable } from './ModelTable';

/** What each source adds to the uncertainty. */
export function BudgetTable({ result: { budget } }: { readonly result: Result }) {
  const unit = useDesk().preferences.speedUnit.value;
  return (
    <>
      <ModelTable table={velocityBudget(budget.exitVelocity, unit)} />
      <ModelTable table={burstBudget(budget.sealBurst, unit)} />
    </>
  );
}
