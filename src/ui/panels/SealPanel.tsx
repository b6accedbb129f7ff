import { changeSeal, setSealInView } from '../../app/edits';
import type { Seal } from '../../app/resultTypes';
import { expanded, type Quantity } from '../../core/estimate';
import { reasonWords } from '../../text/reasonWords';
import { showPercent, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { ReasonText } from '../shell/Notices';
import { Facts } from './Facts';
import { Group, Panel, ToolButton } from './Panel';
import { regionValues } from './regionValues';
import { SoundSection } from './SoundSection';

/** Where the seal is, and when it was found to open. */
export function SealPanel() {
  const { session } = useDesk();
  const { shots } = session;
  const draft = shots.draft.value;
  if (draft === null)
    return (
      <Panel step="seal" title={t('panels.seal.title')}>
        {t('panels.openFirst')}
      </Panel>
    );
  const seal = draft.seals?.muzzle ?? null;
  return (
    <Panel step="seal" title={t('panels.seal.title')}>
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
        {t('panels.seal.inView')}
      </label>
      {seal === null ? (
        <p class="muted">{t('panels.seal.notInView')}</p>
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
const stated = (instant: Quantity) => ({
  time: showQuantity(expanded(instant), 'time', 'ms'),
  coverage: showPercent(instant.coverage),
});

function FoundBurst() {
  const desk = useDesk();
  const reduction = desk.session.measuring.reduction.value;
  if (reduction === null) {
    return <p class="muted">{t('panels.seal.foundWhen')}</p>;
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
          [t('panels.seal.burst'), t('panels.seal.burstIs', stated(burst))],
          [
            t('panels.seal.bulge'),
            'value' in burst.bulgeOnset
              ? t('panels.seal.instant', stated(burst.bulgeOnset))
              : reasonWords(burst.bulgeOnset.unavailable).message,
          ],
        ]}
      />
      <div class="row">
        <button type="button" onClick={() => desk.pick(whole)}>
          {t('panels.seal.lastWholeIs', { frame: whole })}
        </button>
        <button type="button" onClick={() => desk.pick(torn)}>
          {t('panels.seal.firstOpenIs', { frame: torn })}
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
    <Group title={t('panels.seal.where')}>
      <p class="muted">
        {region === null
          ? t('panels.seal.regionFound')
          : t('panels.seal.region', regionValues(region))}
      </p>
      <div class="row">
        <ToolButton mode={{ kind: 'region', which: 'seal' }}>{t('panels.drawRegion')}</ToolButton>
        <button
          type="button"
          disabled={region === null}
          onClick={() =>
            shots.edit(changeSeal({ region: null }), {
              label: t('edits.regionRemoved', { which: 'seal' }),
            })
          }
        >
          {t('panels.seal.find')}
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
        {t('panels.seal.off')}
      </label>
      {plane !== null && (
        <div class="pair">
          <QuantityField
            label={t('panels.seal.planeX')}
            rule={{ ...RULES.pixelU, name: 'x', sign: 'any', max: 1e5 }}
            value={plane.point[0]}
            onCommit={(x) =>
              x !== null && setPlane({ ...plane, point: [x, plane.point[1]] }, 'seal plane')
            }
          />
          <QuantityField
            label={t('panels.seal.planeY')}
            rule={{ ...RULES.pixelU, name: 'y', sign: 'any', max: 1e5 }}
            value={plane.point[1]}
            onCommit={(y) =>
              y !== null && setPlane({ ...plane, point: [plane.point[0], y] }, 'seal plane')
            }
          />
          <QuantityField
            label={t('panels.seal.planeU')}
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
    shots.edit(changeSeal({ burstBetween: next }), { label: t('edits.burst') });
  const frame = player.current.value;
  return (
    <Group title={t('panels.seal.byHand')}>
      {between === null ? (
        <div class="row">
          <button
            type="button"
            disabled={frame >= last}
            onClick={() => set([frame, Math.min(frame + 1, last)])}
          >
            {t('panels.seal.hereAndNext')}
          </button>
          <span class="muted">{t('panels.seal.replaces')}</span>
        </div>
      ) : (
        <>
          <div class="pair">
            <QuantityField
              label={t('panels.seal.lastWhole')}
              rule={{ ...RULES.frame, max: between[1] - 1 }}
              value={between[0]}
              onCommit={(whole) => whole !== null && set([whole, between[1]])}
            />
            <QuantityField
              label={t('panels.seal.firstOpen')}
              rule={{ ...RULES.frame, min: between[0] + 1, max: last }}
              value={between[1]}
              onCommit={(torn) => torn !== null && set([between[0], torn])}
            />
          </div>
          <button type="button" onClick={() => set(null)}>
            {t('panels.seal.useFound')}
          </button>
        </>
      )}
    </Group>
  );
}
