import { removeSeed, setSeeds } from '../../app/edits';
import { showFixed } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { Group, ToolButton } from './Panel';

/** Where a person says the ball is, for the search to start from. */
export function SeedsGroup() {
  const desk = useDesk();
  const { shots, streak: image } = desk.session;
  const seeds = shots.draft.value?.edits.seeds ?? [];
  const held = desk.mode.value.kind === 'seed';
  const streak = image.value.line !== null;
  return (
    <Group title={t('panels.seeds.title')}>
      <p class="muted">{t('panels.seeds.why')}</p>
      <div class="row">
        <ToolButton mode={{ kind: 'seed' }}>{t('panels.seeds.show')}</ToolButton>
        {seeds.length > 1 && (
          <button
            type="button"
            onClick={() => shots.edit(setSeeds([]), { label: t('edits.seedsRemoved') })}
          >
            {t('panels.seeds.removeAll')}
          </button>
        )}
      </div>
      {held && (
        <p class="muted" role="status">
          {t(streak ? 'panels.seeds.click' : 'panels.seeds.clickOnly')}
        </p>
      )}
      {seeds.length > 0 && (
        <ul class="seeds">
          {seeds.map(({ frame, x, y }) => (
            <li key={frame} class="row">
              <button type="button" class="plain" onClick={() => desk.pick(frame)}>
                {t('panels.seeds.frame', { frame: String(frame) })}
              </button>
              <span class="seed-place">
                {t('panels.fromPlace', { x: showFixed(x, 1), y: showFixed(y, 1) })}
              </span>
              <button
                type="button"
                aria-label={t('panels.seeds.removeFrom', { frame: String(frame) })}
                onClick={() =>
                  shots.edit(removeSeed(frame), {
                    label: t('edits.seedRemoved', { frame: `${frame}` }),
                  })
                }
              >
                {t('panels.remove')}
              </button>
            </li>
          ))}
        </ul>
      )}
    </Group>
  );
}
