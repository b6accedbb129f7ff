import type { ComponentChildren } from 'preact';
import type { Work } from '../../app/task';
import { ReasonText } from '../shell/Notices';

/** How far a piece of work is, with a way to cancel it; why it gave nothing; else what it found. */
export function WorkState<T>(props: {
  readonly work: Work<T>;
  /** What is being done: 'Reading the lamp'. */
  readonly doing: string;
  onCancel(): void;
  readonly children: (found: T) => ComponentChildren;
}) {
  const { work, doing, onCancel } = props;
  switch (work.kind) {
    case 'idle':
      return null;
    case 'running':
      return (
        <div class="stack">
          <p role="status">
            {doing}: {Math.round(work.share * 100)} %
          </p>
          <progress value={work.share} aria-label={doing} />
          <button type="button" class="cancel" onClick={onCancel}>
            Cancel
          </button>
        </div>
      );
    case 'failed':
      return (
        <div class="notice notice-problem" role="alert" data-code={work.reason.code}>
          <ReasonText reason={work.reason} />
        </div>
      );
    case 'done':
      return <>{props.children(work.found)}</>;
  }
}
