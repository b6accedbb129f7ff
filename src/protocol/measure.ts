import type { FrameMeasurer } from '../reduction/types';

/** A measuring worker: no state but the setup. */
export interface MeasureApi
  extends Pick<FrameMeasurer, 'prepare' | 'survey' | 'centres' | 'inspect'> {
  /** Serves another thread over this port. */
  attach(port: MessagePort): Promise<void>;
}
