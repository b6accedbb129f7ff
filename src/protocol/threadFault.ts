import { ExitframeError, type Reason } from '../core/reason';

/** What ended a thread; said behind what it was to do. */
export type ThreadFault = Reason;

/** An error that nothing in the thread caught; without words its file did not come. */
export const faultOf = (message: string | undefined): ThreadFault =>
  message
    ? { code: 'threadFailed', message: `It failed: ${message}.`, values: { said: message } }
    : {
        code: 'threadNotFetched',
        message: 'Its file could not be fetched: network or server may be gone.',
      };

export const ENDED_SILENTLY: ThreadFault = {
  code: 'threadEnded',
  message: 'The browser ended it without giving a reason; memory may have run out.',
};

/** Why work ends whose thread died; `what` says which. */
export const stoppedBy = (code: string, what: string, fault: ThreadFault, remedy: string) =>
  new ExitframeError(code, `${what} ${fault.message}`, remedy, {
    values: { ...fault.values, because: fault.code },
  });
