import { setAir, setBall, setFlightRegion } from '../../app/edits';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { EstimateField } from '../fields/EstimateField';
import { RULES } from '../fields/rules';
import { FramesSummary } from './FramesSummary';
import { Measure } from './Measure';
import { Group, Panel, ToolButton } from './Panel';
import { regionValues } from './regionValues';
import { SeedsGroup } from './SeedsGroup';

/** Finding the ball in every frame, and correcting what was found. */
export function BallPanel() {
  const { shots } = useDesk().session;
  const draft = shots.draft.value;
  if (draft === null)
    return (
      <Panel step="ball" title={t('panels.ball.title')}>
        {t('panels.openFirst')}
      </Panel>
    );
  const { ball, region, air } = draft;
  return (
    <Panel step="ball" title={t('panels.ball.title')}>
      <Measure />
      <FramesSummary />
      <Group title={t('panels.ball.title')}>
        <EstimateField
          label={t('panels.ball.diameter')}
          rule={RULES.diameter}
          value={ball.diameter}
          firstU={(diameter) => diameter * 0.002}
          onCommit={(diameter) =>
            diameter !== null &&
            shots.edit(setBall({ diameter }), { label: t('edits.ballDiameter') })
          }
        />
        <EstimateField
          label={t('panels.ball.mass')}
          rule={RULES.mass}
          value={ball.mass}
          firstU={(mass) => mass * 0.005}
          onCommit={(mass) =>
            mass !== null && shots.edit(setBall({ mass }), { label: t('edits.ballMass') })
          }
        />
      </Group>
      <Group title={t('panels.ball.where')}>
        <p class="muted">
          {region.flight === null
            ? t('panels.ball.wholeFrame')
            : t('panels.ball.searched', regionValues(region.flight))}
        </p>
        <div class="row">
          <ToolButton mode={{ kind: 'region', which: 'flight' }}>
            {t('panels.drawRegion')}
          </ToolButton>
          <button
            type="button"
            disabled={region.flight === null}
            onClick={() =>
              shots.edit(setFlightRegion(null), {
                label: t('edits.regionRemoved', { which: 'flight' }),
              })
            }
          >
            {t('panels.ball.searchWhole')}
          </button>
        </div>
      </Group>
      <SeedsGroup />
      <details class="group">
        <summary>{t('panels.ball.air')}</summary>
        <div class="stack">
          <p class="muted">{t('panels.ball.airWhy')}</p>
          <EstimateField
            label={t('panels.ball.temperature')}
            rule={RULES.temperature}
            value={air.temperature}
            firstU={() => 2}
            onCommit={(temperature) =>
              temperature !== null &&
              shots.edit(setAir({ temperature }), { label: t('edits.airTemperature') })
            }
          />
          <EstimateField
            label={t('panels.ball.pressure')}
            rule={RULES.pressure}
            value={air.pressure}
            firstU={() => 1500}
            onCommit={(pressure) =>
              pressure !== null &&
              shots.edit(setAir({ pressure }), { label: t('edits.airPressure') })
            }
          />
          <EstimateField
            label={t('panels.ball.humidity')}
            rule={RULES.humidity}
            value={air.humidity}
            firstU={() => 0.1}
            onCommit={(humidity) =>
              humidity !== null && shots.edit(setAir({ humidity }), { label: t('edits.humidity') })
            }
          />
        </div>
      </details>
    </Panel>
  );
}
