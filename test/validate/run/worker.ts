/** Runs chunks one after the other as the parent process asks for them. */
import { SUBJECTS } from '../registry';
import type { Answer, Task } from './pool';

process.on('message', async ({ subject, name, chunk, seed }: Task) => {
  const answer = (message: Answer) => process.send?.(message);
  try {
    const found = SUBJECTS[subject]?.find(({ validation }) => validation.name === name);
    if (found === undefined) throw new Error(`There is no class ${name}.`);
    answer({ record: await found.validation.run(chunk, seed) });
  } catch (error) {
    answer({ error: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
