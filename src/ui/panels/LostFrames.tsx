import { setTiming } from '../../app/edits';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { Group } from './Panel';

/** Frames the camera did not keep. */
export function LostFrames() {
  const { session } = useDesk();
  const { shots, player } = session;
  const gaps = shots.draft.value?.timing.droppedFrames ?? [];
  const set = (droppedFrames: readonly { after: number; count: number }[]) =>
    shots.edit(setTiming({ droppedFrames }), { label: t('edits.lostFrames') });
  const change = (index: number, part: { after?: number; count?: number }) =>
    set(gaps.map((gap, i) => (i === index ? { ...gap, ...part } : gap)));
  return (
    <Group title={t('panels.lost.title')}>
      {gaps.map((gap, i) => (
        <div key={i} class="stack">
          <div class="pair">
            <QuantityField
              label={t('panels.lost.after')}
              rule={{ ...RULES.frame, max: Math.max(0, player.frameCount.value - 2) }}
              value={gap.after}
              onCommit={(after) => after !== null && change(i, { after })}
            />
            <QuantityField
              label={t('panels.lost.missing')}
              rule={RULES.lostCount}
              value={gap.count}
              onCommit={(count) => count !== null && change(i, { count })}
            />
          </div>
          <button type="button" onClick={() => set(gaps.filter((_, at) => at !== i))}>
            {t('panels.lost.remove')}
          </button>
        </div>
      ))}
      <div class="row">
        <button
          type="button"
          onClick={() => set([...gaps, { after: player.current.value, count: 1 }])}
        >
          {t('panels.lost.add')}
        </button>
        <span class="muted">{t('panels.lost.sign')}</span>
      </div>
    </Group>
  );
}
