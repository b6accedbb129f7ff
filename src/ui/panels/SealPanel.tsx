import { changeSeal, setSealInView } from '../../app/edits';
import type { Seal } from '../../app/resultTypes';
import { expanded, type Quantity } from '../../core/estimate';
import { formatQuantity, percent } from '../../core/format';
import { useDesk } from '../desk';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { ReasonText } from '../shell/Notices';
import { Facts, Group, Panel, ToolButton } from './Panel';
import { SoundSection } from './SoundSection';

/** Where the seal is, and when it was found to open. */
export function SealPanel() {
  const { session } = useDesk();
  const { shots } = session;
  const draft = shots.draft.value;
  if (draft === null)
    return (
      <Panel step="seal" title="Seal">
        Open footage first.
      </Panel>
    );
  const seal = draft.seals?.muzzle ?? null;
  return (
    <Panel step="seal" title="Seal">
      <label class="option">
        <input
          type="checkbox"
          checked={seal !== null}
          onChange={(event) => {
            const inView = event.currentTarget.checked;
            shots.edit(setSealInView(inView), {
              label: inView ? 'seal in view' : 'no seal in view',
            });
          }}
        />
        The muzzle seal is in view
      </label>
      {seal === null ? (
        <p class="muted">No seal in view: no burst time and no lead are stated.</p>
      ) : (
        <>
          <FoundBurst />
          <SealInputs seal={seal} />
          <BurstByHand between={seal.burstBetween} />
        </>
      )}
      <SoundSection sound={draft.sound} />
    </Panel>
  );
}

/** As the Result step states it. */
const stated = (instant: Quantity): string =>
  `${formatQuantity(expanded(instant), 'time', 'ms')} (${percent(instant.coverage)})`;

function FoundBurst() {
  const desk = useDesk();
  const reduction = desk.session.measuring.reduction.value;
  if (reduction === null) {
    return <p class="muted">The burst is found when the film is measured, in Ball.</p>;
  }
  const burst = reduction.result.sealBurst;
  if (!('value' in burst)) {
    return (
      <div class="notice notice-missing" data-code={burst.unavailable.code}>
        <ReasonText reason={burst.unavailable} />
      </div>
    );
  }
  const [whole, torn] = burst.between;
  return (
    <>
      <Facts
        facts={[
          ['Burst', `${stated(burst)} after frame 0`],
          [
            'Bulge begins',
            'value' in burst.bulgeOnset
              ? stated(burst.bulgeOnset)
              : burst.bulgeOnset.unavailable.message,
          ],
        ]}
      />
      <div class="row">
        <button type="button" onClick={() => desk.pick(whole)}>
          Last whole: frame {whole}
        </button>
        <button type="button" onClick={() => desk.pick(torn)}>
          First open: frame {torn}
        </button>
      </div>
    </>
  );
}

function SealInputs({ seal }: { readonly seal: Seal }) {
  const { shots } = useDesk().session;
  const { region, plane } = seal;
  const muzzle = shots.draft.value?.muzzle ?? null;
  const setPlane = (next: Seal['plane'], label: string) =>
    shots.edit(changeSeal({ plane: next }), { label });
  return (
    <Group title="Where it is watched">
      <p class="muted">
        {region === null
          ? 'The region is found from the muzzle plane.'
          : `${region[2]} × ${region[3]} px from x ${region[0]}, y ${region[1]}.`}
      </p>
      <div class="row">
        <ToolButton mode={{ kind: 'region', which: 'seal' }}>Draw the region</ToolButton>
        <button
          type="button"
          disabled={region === null}
          onClick={() => shots.edit(changeSeal({ region: null }), { label: 'seal region removed' })}
        >
          Find it from the muzzle plane
        </button>
      </div>
      <label class="option">
        <input
          type="checkbox"
          checked={plane !== null}
          disabled={muzzle === null}
          onChange={(event) => {
            const own = event.currentTarget.checked && muzzle !== null;
            setPlane(own ? { point: muzzle.point, u: 0.5 } : null, 'seal plane');
          }}
        />
        The seal lies off the muzzle plane
      </label>
      {plane !== null && (
        <div class="pair">
          <QuantityField
            label="x of the seal's plane"
            rule={{ ...RULES.pixelU, name: 'x', sign: 'any', max: 1e5 }}
            value={plane.point[0]}
            onCommit={(x) =>
              x !== null && setPlane({ ...plane, point: [x, plane.point[1]] }, 'seal plane')
            }
          />
          <QuantityField
            label="y"
            rule={{ ...RULES.pixelU, name: 'y', sign: 'any', max: 1e5 }}
            value={plane.point[1]}
            onCommit={(y) =>
              y !== null && setPlane({ ...plane, point: [plane.point[0], y] }, 'seal plane')
            }
          />
          <QuantityField
            label="± u along the flight"
            rule={RULES.pixelU}
            value={plane.u}
            onCommit={(u) => u !== null && setPlane({ ...plane, u }, 'seal plane')}
          />
        </div>
      )}
    </Group>
  );
}

function BurstByHand({ between }: { readonly between: Seal['burstBetween'] }) {
  const { shots, player } = useDesk().session;
  const last = Math.max(1, player.frameCount.value - 1);
  const set = (next: Seal['burstBetween']) =>
    shots.edit(changeSeal({ burstBetween: next }), { label: 'burst frames' });
  const frame = player.current.value;
  return (
    <Group title="Burst set by hand">
      {between === null ? (
        <div class="row">
          <button
            type="button"
            disabled={frame >= last}
            onClick={() => set([frame, Math.min(frame + 1, last)])}
          >
            Whole in this frame, open in the next
          </button>
          <span class="muted">Replaces what was found.</span>
        </div>
      ) : (
        <>
          <div class="pair">
            <QuantityField
              label="Last whole: frame"
              rule={{ ...RULES.frame, max: between[1] - 1 }}
              value={between[0]}
              onCommit={(whole) => whole !== null && set([whole, between[1]])}
            />
            <QuantityField
              label="First open: frame"
              rule={{ ...RULES.frame, min: between[0] + 1, max: last }}
              value={between[1]}
              onCommit={(torn) => torn !== null && set([between[0], torn])}
            />
          </div>
          <button type="button" onClick={() => set(null)}>
            Use the burst that is found
          </button>
        </>
      )}
    </Group>
  );
}
