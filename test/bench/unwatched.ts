import { setTimeout as pause } from 'node:timers/promises';
import type { Browser, CDPSession } from 'playwright-core';

const LOOK_EVERY_MS = 200;

/** A page that is asked things now and then, and else left alone. */
export interface UnwatchedPage {
  /** What an expression comes to there. */
  evaluate(expression: string): Promise<unknown>;
  /** Waits until an expression is true there. Throws once `timeout` ms are over. */
  until(expression: string, timeout: number): Promise<void>;
  setFiles(selector: string, paths: readonly string[]): Promise<void>;
}

/**
 * Opens a page beside the driver's own ones. Of those the driver has all traffic recorded, in each of their threads and
 * in the page's own process: OpenCV's program alone then counts 10 MiB a thread more than it does for users.
 */
export async function openUnwatched(
  browser: Browser,
  url: string,
  /** Run before the page's own script. */
  prelude = '',
): Promise<UnwatchedPage> {
  const cdp = await browser.newBrowserCDPSession();
  const { targetId } = await cdp.send('Target.createTarget', {
    ...{ url: 'about:blank', width: 1280, height: 800 },
  });
  const ask = await talkTo(cdp, targetId);
  await ask('Page.enable', {});
  await ask('Page.addScriptToEvaluateOnNewDocument', { source: prelude });
  await ask('Page.navigate', { url });
  const evaluated = async (expression: string, more = {}): Promise<{ [key: string]: unknown }> => {
    const { result, exceptionDetails } = await ask('Runtime.evaluate', { expression, ...more });
    if (exceptionDetails !== undefined) throw new Error(JSON.stringify(exceptionDetails));
    return result as { [key: string]: unknown };
  };
  const evaluate: UnwatchedPage['evaluate'] = async (expression) =>
    (await evaluated(expression, { returnByValue: true })).value;
  return {
    evaluate,
    async until(expression, timeout) {
      const end = performance.now() + timeout;
      while ((await evaluate(expression)) !== true) {
        if (performance.now() > end) throw new Error(`Not within ${timeout} ms: ${expression}`);
        await pause(LOOK_EVERY_MS);
      }
    },
    async setFiles(selector, files) {
      const { objectId } = await evaluated(`document.querySelector(${JSON.stringify(selector)})`);
      await ask('DOM.setFileInputFiles', { files, objectId });
    },
  };
}

type Answer = { readonly [key: string]: unknown };

/** A way to ask a page by the DevTools protocol, of which the driver's own watching knows nothing. */
async function talkTo(cdp: CDPSession, targetId: string) {
  const { sessionId } = await cdp.send('Target.attachToTarget', { targetId, flatten: false });
  const waiting = new Map<number, (answer: { result?: Answer; error?: unknown }) => void>();
  cdp.on('Target.receivedMessageFromTarget', ({ message }) => {
    const { id, ...answer } = JSON.parse(message);
    waiting.get(id)?.(answer);
    waiting.delete(id);
  });
  let id = 0;
  return (method: string, params: object): Promise<Answer> =>
    new Promise((resolve, reject) => {
      id += 1;
      waiting.set(id, ({ result, error }) => {
        if (result === undefined) reject(new Error(`${method}: ${JSON.stringify(error)}`));
        else resolve(result);
      });
      cdp
        .send('Target.sendMessageToTarget', {
          sessionId,
          message: JSON.stringify({ id, method, params }),
        })
        .catch(reject);
    });
}
