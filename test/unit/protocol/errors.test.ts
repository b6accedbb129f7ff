import { MessageChannel } from 'node:worker_threads';
import { expose, wrap } from 'comlink';
import { expect, it } from 'vitest';
import { ExitframeError } from '../../../src/core/reason';
import { carryReasons } from '../../../src/protocol/errors';

/** Node's ports speak `on`; comlink asks for the web's `addEventListener`, which Node's ports have as well. */
it('an error keeps its code and remedy on its way between threads', async () => {
  carryReasons();
  const { port1, port2 } = new MessageChannel();
  try {
    expose(
      {
        refuse: () => {
          throw new ExitframeError('emptyFile', 'The file is empty.', 'Copy it again.');
        },
      },
      port1 as unknown as MessagePort,
    );
    const remote = wrap<{ refuse(): void }>(port2 as unknown as MessagePort);
    await expect(remote.refuse()).rejects.toMatchObject({
      name: 'ExitframeError',
      code: 'emptyFile',
      message: 'The file is empty.',
      remedy: 'Copy it again.',
    });
  } finally {
    port1.close();
    port2.close();
  }
});
