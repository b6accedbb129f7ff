import { useState } from 'preact/hooks';
import { rateFromTimer } from '../../app/clockInputs';
import { setTiming } from '../../app/edits';
import type { Estimate } from '../../core/estimate';
import type { Outcome } from '../../core/reason';
import { showFixed, showNumberAt, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { ReasonText } from '../shell/Notices';
import { Fold } from './Panel';

/** The recording rate measured from the film itself, against a filmed timer or a lamp. */
export function RateCheck() {
  const [found, setFound] = useState<Outcome<Estimate> | null>(null);
  return (
    <Fold title={t('panels.rateCheck.title')}>
      <TimerCheck onFound={setFound} />
      <LampCheck onFound={setFound} />
      {found !== null && <FoundRate found={found} />}
    </Fold>
  );
}

interface CheckProps {
  onFound(found: Outcome<Estimate>): void;
}

function TimerCheck({ onFound }: CheckProps) {
  const { player } = useDesk().session;
  const [from, setFrom] = useState<number | null>(null);
  const [to, setTo] = useState<number | null>(null);
  const [elapsed, setElapsed] = useState<number | null>(null);
  const [readingU, setReadingU] = useState<number | null>(0.001);
  const ready = from !== null && to !== null && elapsed !== null && readingU !== null;
  return (
    <div class="stack">
      <h3>{t('panels.rateCheck.timer')}</h3>
      <div class="row">
        <button type="button" onClick={() => setFrom(player.current.value)}>
          {t('panels.rateCheck.first', { frame: from ?? 'none' })}
        </button>
        <button type="button" onClick={() => setTo(player.current.value)}>
          {t('panels.rateCheck.second', { frame: to ?? 'none' })}
        </button>
      </div>
      <div class="pair">
        <QuantityField
          label={t('panels.rateCheck.elapsed')}
          rule={RULES.elapsed}
          value={elapsed}
          optional
          placeholder="0.25 s"
          onCommit={setElapsed}
        />
        <QuantityField
          label={t('panels.rateCheck.readingU')}
          rule={RULES.timerReading}
          value={readingU}
          onCommit={setReadingU}
        />
      </div>
      <button
        type="button"
        disabled={!ready}
        onClick={() => ready && onFound(rateFromTimer(from, to, elapsed, readingU))}
      >
        {t('panels.rateCheck.workOut')}
      </button>
    </div>
  );
}

function LampCheck({ onFound }: CheckProps) {
  const { session } = useDesk();
  const [mains, setMains] = useState<number | null>(50);
  const [share, setShare] = useState<number | null>(null);
  const run = async () => {
    if (mains === null) return;
    setShare(0);
    try {
      // A lamp on the mains brightens twice in each period.
      onFound(await session.rateFromLamp(2 * mains, setShare));
    } catch (error) {
      session.notices.report('clock', error);
    } finally {
      setShare(null);
    }
  };
  return (
    <div class="stack">
      <h3>{t('panels.rateCheck.lamp')}</h3>
      <QuantityField
        label={t('panels.rateCheck.mains')}
        rule={RULES.mains}
        value={mains}
        onCommit={setMains}
      />
      <button type="button" disabled={mains === null || share !== null} onClick={() => void run()}>
        {share === null
          ? t('panels.rateCheck.look')
          : t('panels.progress', {
              doing: t('panels.rateCheck.reading'),
              percent: showNumberAt(Math.round(share * 100), 3),
            })}
      </button>
    </div>
  );
}

function FoundRate({ found }: { readonly found: Outcome<Estimate> }) {
  const { shots } = useDesk().session;
  if (!found.ok) {
    return (
      <div class="notice notice-problem">
        <ReasonText reason={found.reason} />
      </div>
    );
  }
  const typed = shots.draft.value?.timing.recordingRate ?? null;
  const apart =
    typed === null
      ? null
      : Math.abs(typed.value - found.value.value) / Math.hypot(typed.u, found.value.u);
  const rate = showQuantity(found.value, 'rate', '/s');
  return (
    <div class="notice notice-information" role="status">
      <p>
        {apart === null
          ? t('panels.rateCheck.gives', { rate })
          : apart <= 2
            ? t('panels.rateCheck.agrees', { rate })
            : t('panels.rateCheck.apart', { rate, number: showFixed(apart, 1) })}
      </p>
      <button
        type="button"
        onClick={() =>
          shots.edit(setTiming({ source: 'recordingRate', recordingRate: found.value }), {
            label: t('edits.recordingRate'),
          })
        }
      >
        {t('panels.rateCheck.use')}
      </button>
    </div>
  );
}
