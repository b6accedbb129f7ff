import type { FootageInfo } from '../core/film';
import type { Result } from '../shot/result';
import type { Shot } from '../shot/schema';

/** What a report is made from. */
export interface ReportSubject {
  readonly result: Result;
  /** The shot that the result was concluded from. */
  readonly shot: Shot;
  readonly footage: FootageInfo;
  /** What the outside air could do at most; a rule of thumb beside the result. */
  readonly drive: {
    readonly force: number;
    readonly acceleration: number;
    readonly gravities: number;
  };
  /** The footage is a rendered sample. */
  readonly rendered: boolean;
  readonly speedUnit: string;
  /** Day it is made on, in words. */
  readonly madeOn: string;
  /** What anyone near such a launcher is asked, last of all to defer to local rules. */
  readonly cautions: readonly string[];
}

/** Something known by a name. */
export interface Fact {
  readonly name: string;
  readonly text: string;
}
