import { setAir, setBall, setFlightRegion } from '../../app/edits';
import { useDesk } from '../desk';
import { EstimateField } from '../fields/EstimateField';
import { RULES } from '../fields/rules';
import { FramesSummary } from './FramesSummary';
import { Measure } from './Measure';
import { Group, Panel, ToolButton } from './Panel';
import { SeedsGroup } from './SeedsGroup';

/** Finding the ball in every frame, and correcting what was found. */
export function BallPanel() {
  const { shots } = useDesk().session;
  const draft = shots.draft.value;
  if (draft === null)
    return (
      <Panel step="ball" title="Ball">
        Open footage first.
      </Panel>
    );
  const { ball, region, air } = draft;
  return (
    <Panel step="ball" title="Ball">
      <Measure />
      <FramesSummary />
      <Group title="Ball">
        <EstimateField
          label="Diameter"
          rule={RULES.diameter}
          value={ball.diameter}
          firstU={(diameter) => diameter * 0.002}
          onCommit={(diameter) =>
            diameter !== null && shots.edit(setBall({ diameter }), { label: 'ball diameter' })
          }
        />
        <EstimateField
          label="Mass"
          rule={RULES.mass}
          value={ball.mass}
          firstU={(mass) => mass * 0.005}
          onCommit={(mass) =>
            mass !== null && shots.edit(setBall({ mass }), { label: 'ball mass' })
          }
        />
      </Group>
      <Group title="Where it flies">
        <p class="muted">
          {region.flight === null
            ? 'The whole frame is searched.'
            : `Searched: ${region.flight[2]} × ${region.flight[3]} px from x ${region.flight[0]}, y ${region.flight[1]}.`}
        </p>
        <div class="row">
          <ToolButton mode={{ kind: 'region', which: 'flight' }}>Draw the region</ToolButton>
          <button
            type="button"
            disabled={region.flight === null}
            onClick={() => shots.edit(setFlightRegion(null), { label: 'flight region removed' })}
          >
            Search the whole frame
          </button>
        </div>
      </Group>
      <SeedsGroup />
      <details class="group">
        <summary>Air in the room</summary>
        <div class="stack">
          <p class="muted">Bounds how much drag is plausible.</p>
          <EstimateField
            label="Temperature"
            rule={RULES.temperature}
            value={air.temperature}
            firstU={() => 2}
            onCommit={(temperature) =>
              temperature !== null &&
              shots.edit(setAir({ temperature }), { label: 'air temperature' })
            }
          />
          <EstimateField
            label="Pressure"
            rule={RULES.pressure}
            value={air.pressure}
            firstU={() => 1500}
            onCommit={(pressure) =>
              pressure !== null && shots.edit(setAir({ pressure }), { label: 'air pressure' })
            }
          />
          <EstimateField
            label="Relative humidity"
            rule={RULES.humidity}
            value={air.humidity}
            firstU={() => 0.1}
            onCommit={(humidity) =>
              humidity !== null && shots.edit(setAir({ humidity }), { label: 'humidity' })
            }
          />
        </div>
      </details>
    </Panel>
  );
}
