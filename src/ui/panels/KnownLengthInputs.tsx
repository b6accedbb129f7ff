import type { DraftLength } from '../../app/draft';
import { changeLength, removeLength } from '../../app/edits';
import { formatNumber, formatQuantity } from '../../core/format';
import { useDesk } from '../desk';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { Group, ToolButton } from './Panel';

/** One known length: its ends on the film, its value, and how far off the flight line it lies. */
export function KnownLengthInputs(props: { readonly index: number; readonly length: DraftLength }) {
  const { index, length } = props;
  const { session } = useDesk();
  const { shots, readings } = session;
  const change = (part: Partial<DraftLength>, label: string) =>
    shots.edit(changeLength(index, part), { label: `${label} of length ${index + 1}` });
  const pixels = Math.hypot(length.to[0] - length.from[0], length.to[1] - length.from[1]);
  const scale = readings.scale.value;
  const lengths = shots.draft.value?.scale.lengths ?? [];
  const stated = lengths.slice(0, index).filter((one) => one.length !== null).length;
  const alone = scale?.ok && length.length !== null ? scale.value.lengths[stated] : undefined;
  return (
    <Group title={`Length ${index + 1}`}>
      <div class="row">
        <ToolButton mode={{ kind: 'length', index }}>Move its ends</ToolButton>
        <button
          type="button"
          onClick={() => shots.edit(removeLength(index), { label: `length ${index + 1} removed` })}
        >
          Remove
        </button>
      </div>
      <p class="muted">
        {formatNumber(pixels, 5)} px on the film
        {alone !== undefined &&
          `; alone it gives ${formatQuantity(alone, 'length', 'mm')} per pixel`}
      </p>
      {pixels < 1 && (
        <p class="field-problem" role="alert">
          Both ends lie on the same pixel. Drag them apart, onto the two marks.
        </p>
      )}
      <div class="estimate">
        <QuantityField
          label="Distance between the marks"
          rule={RULES.knownLength}
          value={length.length}
          placeholder="200 mm"
          onCommit={(value) => change({ length: value }, 'value')}
        />
        <QuantityField
          label="± u"
          rule={RULES.lengthU}
          value={length.u}
          onCommit={(u) => u !== null && change({ u }, 'uncertainty')}
        />
      </div>
      <div class="estimate">
        <QuantityField
          label="Depth behind the flight"
          rule={RULES.depthOffset}
          value={length.depthOffset}
          hint="Negative: nearer to the camera."
          onCommit={(depthOffset) => depthOffset !== null && change({ depthOffset }, 'depth')}
        />
        <QuantityField
          label="± u"
          rule={RULES.depthOffsetU}
          value={length.depthOffsetU}
          onCommit={(u) => u !== null && change({ depthOffsetU: u }, 'depth uncertainty')}
        />
      </div>
      <QuantityField
        label="± u of each end on the film"
        rule={RULES.pixelU}
        value={length.endpointU}
        onCommit={(u) => u !== null && change({ endpointU: u }, 'end uncertainty')}
      />
    </Group>
  );
}
