import { isRejected } from '../../app/frameStates';
import type { Position } from '../../app/resultTypes';
import { lookedFor, placeText, useWords } from '../../report/table';
import { showCount, showNumber } from '../../text/show';
import { t } from '../../text/text';
import { rejectFrame } from '../actions';
import { useDesk } from '../desk';
import { Wide } from './Wide';

/** Every frame's centre, whether it was used, and why not. */
export function PositionsTable({ positions }: { readonly positions: readonly Position[] }) {
  const looked = lookedFor(positions);
  const found = looked.filter((one) => one.x !== null);
  return (
    <details class="group">
      <summary>
        {t('result.centres.summary', {
          found: showCount(found.length),
          used: showCount(found.filter((one) => one.used).length),
        })}
      </summary>
      <Wide name={t('result.centres.title')} look="positions">
        <table>
          <thead>
            <tr>
              <th scope="col">{t('result.centres.frame')}</th>
              <th scope="col" class="number">
                {t('result.centres.time')}
              </th>
              <th scope="col" class="number">
                {t('result.centres.x')}
              </th>
              <th scope="col" class="number">
                {t('result.centres.y')}
              </th>
              <th scope="col" class="number">
                {t('result.centres.distance')}
              </th>
              <th scope="col">{t('result.centres.used')}</th>
              <th scope="col">{t('result.centres.byHand')}</th>
            </tr>
          </thead>
          <tbody>
            {looked.map((one) => (
              <PositionRow key={one.frame} position={one} />
            ))}
          </tbody>
        </table>
      </Wide>
    </details>
  );
}

function PositionRow({ position }: { readonly position: Position }) {
  const desk = useDesk();
  const { shots } = desk.session;
  const { frame, time, x, y, ux, uy, s, us } = position;
  const rejected = isRejected(shots.draft.value?.edits, frame);
  const current = desk.session.player.current.value === frame;
  return (
    <tr class={current ? 'row-current' : ''}>
      <td>
        <button type="button" class="plain" onClick={() => desk.pick(frame)}>
          {frame}
        </button>
      </td>
      <td class="number">{showNumber(time * 1000, 6)}</td>
      <td class="number">{placeText(x, ux, 'pixels')}</td>
      <td class="number">{placeText(y, uy, 'pixels')}</td>
      <td class="number">{placeText(s, us, 'length')}</td>
      <td>{useWords(position)}</td>
      <td>
        <button type="button" onClick={() => rejectFrame(desk, frame)}>
          {t(rejected ? 'result.centres.restore' : 'result.centres.reject')}
        </button>
      </td>
    </tr>
  );
}
