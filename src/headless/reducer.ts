/** A process of the crew: reduces the shots it is sent, one at a time. */
import { type Outcome, reasonOf, success } from '../core/reason';
import { perform, type Task, type TaskDone } from './task';

async function outcomeOf(task: Task): Promise<Outcome<TaskDone>> {
  try {
    return success(await perform(task));
  } catch (error) {
    return { ok: false, reason: reasonOf(error) };
  }
}

process.on('message', async (task: Task) => process.send?.(await outcomeOf(task)));
// Whoever started it is gone, or has no more work.
process.on('disconnect', () => process.exit());
