import { isRejected } from '../../app/frameStates';
import type { Position } from '../../app/resultTypes';
import { formatNumber } from '../../core/format';
import { lookedFor, placeText, useWords } from '../../report/table';
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
        Centres of {found.length} frames, {found.filter((one) => one.used).length} used
      </summary>
      <Wide name="Centres" look="positions">
        <table>
          <thead>
            <tr>
              <th scope="col">Frame</th>
              <th scope="col" class="number">
                Time, ms
              </th>
              <th scope="col" class="number">
                x, px
              </th>
              <th scope="col" class="number">
                y, px
              </th>
              <th scope="col" class="number">
                Distance, mm
              </th>
              <th scope="col">Used</th>
              <th scope="col">By hand</th>
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
      <td class="number">{formatNumber(time * 1000, 6)}</td>
      <td class="number">{placeText(x, ux, 'pixels')}</td>
      <td class="number">{placeText(y, uy, 'pixels')}</td>
      <td class="number">{placeText(s, us, 'length')}</td>
      <td>{useWords(position)}</td>
      <td>
        <button type="button" onClick={() => rejectFrame(desk, frame)}>
          {rejected ? 'Restore' : 'Reject'}
        </button>
      </td>
    </tr>
  );
}
