import type { FrameMeasurer } from '../reduction/types';

/** A measuring worker: no state but the setup. */
export type MeasureApi = FrameMeasurer;
