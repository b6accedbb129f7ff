import { useEffect, useMemo } from 'preact/hooks';
import { greyRange } from '../../app/greyRange';
import type { Reduction } from '../../app/resultTypes';
import type { GreyFrame } from '../../core/frame';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ReasonText } from '../shell/Notices';
import { pictureUrl } from './pictureUrl';

/** The whole flight in one picture, made for this report from the frames whose balls lie side by side. */
export function FlightPicture({ reduction }: { readonly reduction: Reduction }) {
  const { flight, still } = useDesk().session.scenery;
  useEffect(() => {
    void flight.compose({ frames: 'apart', what: 'ball' });
    return () => flight.cancel();
  }, [flight, reduction]);
  const [made, scene] = [flight.state.value, still.state.value];
  if (made.kind === 'done') return <Flight picture={made.found} />;
  const failed = [made, scene].find((one) => one.kind === 'failed');
  if (failed?.kind !== 'failed') return <p class="muted">{t('report.pictures.puttingTogether')}</p>;
  return (
    <div class="notice notice-missing">
      <ReasonText reason={failed.reason} />
    </div>
  );
}

function Flight({ picture }: { readonly picture: GreyFrame }) {
  const url = useMemo(() => pictureUrl(picture, greyRange(picture)), [picture]);
  const { width, height } = picture;
  return (
    <figure class="key-frame">
      <svg
        class="film-picture flight-picture"
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={t('report.pictures.flight')}
      >
        <image href={url} width={width} height={height} />
      </svg>
      <figcaption>{t('report.pictures.flightCaption')}</figcaption>
    </figure>
  );
}
