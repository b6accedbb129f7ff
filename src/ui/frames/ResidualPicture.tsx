import { useMemo } from 'preact/hooks';
import { residualReading } from '../../app/inspectionReadings';
import type { FrameInspection } from '../../app/resultTypes';
import { formatNumber } from '../../core/format';
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
  const told = reading === null ? '' : `, ${formatNumber(reading.rms, 2)} times the noise`;
  return (
    <figure class="fit-picture residual">
      <figcaption>
        <strong>Film minus model</strong>
      </figcaption>
      <PixelPicture
        columns={columns}
        rows={rows}
        label={`What the model leaves over in frame ${inspection?.frame ?? ''}${told}`}
        paint={paint}
        placeholder={
          <p>
            {inspection === null
              ? 'Laying the fit open…'
              : 'No model was fitted in this frame, so nothing can be taken off the film.'}
          </p>
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
          <span class="residual-unit">standard deviations of the noise</span>
        </div>
      )}
    </figure>
  );
}
