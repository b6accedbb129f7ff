import type { ComponentChildren } from 'preact';
import type { Work } from '../../app/task';
import { showNumberAt } from '../../text/show';
import { t } from '../../text/text';
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
            {t('panels.progress', {
              doing,
              percent: showNumberAt(Math.round(work.share * 100), 3),
            })}
          </p>
          <progress value={work.share} aria-label={doing} />
          <button type="button" class="cancel" onClick={onCancel}>
            {t('panels.cancel')}
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
