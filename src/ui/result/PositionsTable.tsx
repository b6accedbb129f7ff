import { isRejected } from '../../app/frameStates';
import type { Position } from '../../app/resultTypes';
import { formatNumber, formatQuantity } from '../../core/format';
import { rejectFrame } from '../actions';
import { useDesk } from '../desk';
import { Wide } from './Wide';

/** Every frame's centre, whether it was used, and why not. */
export function PositionsTable({ positions }: { readonly positions: readonly Position[] }) {
  const looked = positions.filter((one) => one.x !== null || one.manual || one.why !== null);
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

const inPixels = (value: number | null, u: number | null) =>
  value === null || u === null
    ? ''
    : formatQuantity({ value, u }, 'pixels', 'px').replace(' px', '');

function PositionRow({ position }: { readonly position: Position }) {
  const desk = useDesk();
  const { shots } = desk.session;
  const { frame, time, x, y, ux, uy, s, us, used, manual, why } = position;
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
      <td class="number">{inPixels(x, ux)}</td>
      <td class="number">{inPixels(y, uy)}</td>
      <td class="number">
        {s === null || us === null
          ? ''
          : formatQuantity({ value: s, u: us }, 'length', 'mm').replace(' mm', '')}
      </td>
      <td>
        {used ? 'yes' : `no: ${why?.message ?? 'left out'}`}
        {manual && ' (placed by hand)'}
      </td>
      <td>
        <button type="button" onClick={() => rejectFrame(desk, frame)}>
          {rejected ? 'Restore' : 'Reject'}
        </button>
      </td>
    </tr>
  );
}
