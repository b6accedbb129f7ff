import type { FootageInfo } from '../core/film';
import type { GreyFrame } from '../core/frame';
import type { Background } from '../image/types';
import type { FlightQuestion, LookPart, LookQuestion } from '../reduction/lookThrough';

/** Pictures of a film as a whole, for the screen; frames come from the film worker, not through the page. */
export interface SceneryApi {
  /** Frames come over this port. */
  connect(film: MessagePort): Promise<void>;
  lookThrough(question: LookQuestion, onPart: (part: LookPart) => void): Promise<void>;
  /** The scene without anything that moves. `onShare` gets 0..1. */
  stillScene(info: FootageInfo, onShare: (share: number) => void): Promise<Background>;
  flight(question: FlightQuestion, onShare: (share: number) => void): Promise<GreyFrame>;
  /** Gives up what is under way, and with it its pass over the film. */
  stop(): Promise<void>;
}
