import { useMemo } from 'preact/hooks';
import { residualReading } from '../../app/inspectionReadings';
import type { FrameInspection } from '../../app/resultTypes';
import { showNumber } from '../../text/show';
import { t } from '../../text/text';
import { Cased } from '../film/Cased';
import { LeftOut } from './LeftOut';
import { PixelPicture } from './PixelPicture';
import { outlinePaths, paintResidual } from './planes';

/** White and black stand for this many standard deviations of the noise, in every frame. */
const SPAN = 5;

/** What the fitted model leaves over of the film. Middle grey: nothing. */
export function ResidualPicture({ inspection }: { readonly inspection: FrameInspection | null }) {
  const residual = inspection?.residual ?? null;
  const [x, y, columns, rows] = inspection?.rect ?? [0, 0, 1, 1];
  const paint = useMemo(
    () =>
      residual === null ? null : (rgba: Uint8ClampedArray) => paintResidual(residual, SPAN, rgba),
    [residual],
  );
  const reading = inspection === null ? null : residualReading(inspection);
  const index = inspection?.frame ?? '';
  return (
    <figure class="fit-picture residual">
      <figcaption>
        <strong>{t('frames.residual.title')}</strong>
      </figcaption>
      <PixelPicture
        columns={columns}
        rows={rows}
        label={
          reading === null
            ? t('frames.residual.label', { frame: index })
            : t('frames.residual.labelNoise', { frame: index, rms: showNumber(reading.rms, 2) })
        }
        paint={paint}
        placeholder={
          <p>{t(inspection === null ? 'frames.layingOpen' : 'frames.residual.noModel')}</p>
        }
      >
        {(scale) => {
          const place = (at: readonly [number, number]): readonly [number, number] => [
            (at[0] - x + 0.5) * scale,
            (at[1] - y + 0.5) * scale,
          ];
          const { seen, unseen } = outlinePaths(inspection?.outline ?? [], place);
          return (
            <svg
              class="fit-overlay"
              width={columns * scale}
              height={rows * scale}
              aria-hidden="true"
            >
              {inspection?.weight != null && (
                <LeftOut weight={inspection.weight} columns={columns} scale={scale} />
              )}
              <Cased class="fit-faint fit-unseen" d={unseen} />
              <Cased class="fit-faint" d={seen} />
            </svg>
          );
        }}
      </PixelPicture>
      {residual !== null && (
        <div class="residual-scale">
          <span>−{SPAN}</span>
          <span class="residual-bar" />
          <span>+{SPAN}</span>
          <span class="residual-unit">{t('frames.residual.unit')}</span>
        </div>
      )}
    </figure>
  );
}
