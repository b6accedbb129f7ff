/** The words of a result and a shot, for the components that show them. */

import type { ReduceApi } from '../protocol/reduce';
import type { SceneryApi } from '../protocol/scenery';

/** One frame's fit laid open. */
export type FrameInspection = NonNullable<Awaited<ReturnType<ReduceApi['inspect']>>>;

/** The scene without anything that moves. */
export type StillScene = Awaited<ReturnType<SceneryApi['stillScene']>>;

export type { LineTimeReport } from '../clock/lineTime';
export type { Agreement } from '../compare/agreement';
export type { GapCloser } from '../compare/gap';
export type { Expectation } from '../plan/expect';
export type { Judgement } from '../plan/judge';
export type { Sweep } from '../plan/sweep';
export type { BoardAnswer, LampAnswer } from '../protocol/calibrate';
export type { MarkedEdge } from '../reduction/calibrateLens';
export type { Reduction } from '../reduction/types';
export type { NotebookEntry } from '../shot/notebook';
export type { CameraTrade, Light, ModelName, Plan, PlanningInputs } from '../shot/planning';
export type {
  Position,
  Result,
} from '../shot/result';
export type { FitChoice, LauncherInputs, Seal, Shot } from '../shot/schema';
export type { Setup } from '../shot/setupFile';
