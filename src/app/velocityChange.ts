import { computed, type ReadonlySignal } from '@preact/signals';
import { isAvailable, type Quantity, type Reported } from '../core/estimate';
import { completeShot, type ShotDraft } from './draft';
import type { Reduction, Shot } from './resultTypes';

/** What the last edit did to the exit velocity. */
export interface VelocityChange {
  /** What was edited. */
  readonly label: string;
  /** Null: there was none. */
  readonly before: Quantity | null;
  /** Null: there is none now; undefined: not worked out yet. */
  readonly after: Quantity | null | undefined;
}

/** Results remembered for comparison; with older ones an edit is not compared any more. */
const MOST_KEPT = 64;

/** Remembers the exit velocity by the shot it was concluded from. */
export function createVelocityMemory() {
  const known = new Map<string, Reported>();
  return {
    remember(shot: Shot, { result }: Reduction) {
      const key = JSON.stringify(shot);
      known.delete(key);
      known.set(key, result.exitVelocity);
      const [oldest] = known.keys();
      if (known.size > MOST_KEPT && oldest !== undefined) known.delete(oldest);
    },
    /** Undefined where nothing was concluded from such a shot; null where it gave no exit velocity. */
    of(draft: ShotDraft): Quantity | null | undefined {
      const shot = completeShot(draft);
      const reported = shot.ok ? known.get(JSON.stringify(shot.value)) : undefined;
      if (reported === undefined) return undefined;
      return isAvailable(reported) ? reported : null;
    },
    forget: () => known.clear(),
  };
}

/** Null where there is no edit to compare across. */
export function velocityChange(
  shots: {
    readonly draft: ReadonlySignal<ShotDraft | null>;
    readonly lastEdit: ReadonlySignal<{
      readonly before: ShotDraft;
      readonly label: string;
    } | null>;
  },
  measuring: {
    readonly reduction: ReadonlySignal<Reduction | null>;
    readonly freshness: ReadonlySignal<'fresh' | 'refitting' | 'measureAgain'>;
    velocityOf(draft: ShotDraft): Quantity | null | undefined;
  },
): ReadonlySignal<VelocityChange | null> {
  return computed(() => {
    const draft = shots.draft.value;
    const edit = shots.lastEdit.value;
    const concluded = measuring.reduction.value !== null;
    if (!concluded || measuring.freshness.value === 'measureAgain') return null;
    if (draft === null || edit === null) return null;
    const before = measuring.velocityOf(edit.before);
    if (before === undefined) return null;
    return { label: edit.label, before, after: measuring.velocityOf(draft) };
  });
}
