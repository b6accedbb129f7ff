import type { DraftLength } from '../../app/draft';
import { changeLength, removeLength } from '../../app/edits';
import { showNumber, showQuantity } from '../../text/show';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { QuantityField } from '../fields/QuantityField';
import { RULES } from '../fields/rules';
import { Group, ToolButton } from './Panel';

/** One known length: its ends on the film, its value, and how far off the flight line it lies. */
export function KnownLengthInputs(props: { readonly index: number; readonly length: DraftLength }) {
  const { index, length } = props;
  const { session } = useDesk();
  const { shots, readings } = session;
  const change = (part: Partial<DraftLength>, what: string) =>
    shots.edit(changeLength(index, part), {
      label: t('edits.length', { what, number: `${index + 1}` }),
    });
  const pixels = Math.hypot(length.to[0] - length.from[0], length.to[1] - length.from[1]);
  const scale = readings.scale.value;
  const lengths = shots.draft.value?.scale.lengths ?? [];
  const stated = lengths.slice(0, index).filter((one) => one.length !== null).length;
  const alone = scale?.ok && length.length !== null ? scale.value.lengths[stated] : undefined;
  return (
    <Group title={t('panels.length.title', { number: String(index + 1) })}>
      <div class="row">
        <ToolButton mode={{ kind: 'length', index }}>{t('panels.moveEnds')}</ToolButton>
        <button
          type="button"
          onClick={() =>
            shots.edit(removeLength(index), {
              label: t('edits.lengthRemoved', { number: `${index + 1}` }),
            })
          }
        >
          {t('panels.remove')}
        </button>
      </div>
      <p class="muted">
        {alone === undefined
          ? t('panels.length.onFilm', { pixels: showNumber(pixels, 5) })
          : t('panels.length.onFilmAlone', {
              pixels: showNumber(pixels, 5),
              scale: showQuantity(alone, 'length', 'mm'),
            })}
      </p>
      {pixels < 1 && (
        <p class="field-problem" role="alert">
          {t('panels.length.together')}
        </p>
      )}
      <div class="estimate">
        <QuantityField
          label={t('panels.length.distance')}
          rule={RULES.knownLength}
          value={length.length}
          placeholder="200 mm"
          onCommit={(value) => change({ length: value }, 'value')}
        />
        <QuantityField
          label={t('fields.u')}
          rule={RULES.lengthU}
          value={length.u}
          onCommit={(u) => u !== null && change({ u }, 'u')}
        />
      </div>
      <div class="estimate">
        <QuantityField
          label={t('panels.depth')}
          rule={RULES.depthOffset}
          value={length.depthOffset}
          hint={t('panels.depthHint')}
          onCommit={(depthOffset) => depthOffset !== null && change({ depthOffset }, 'depth')}
        />
        <QuantityField
          label={t('fields.u')}
          rule={RULES.depthOffsetU}
          value={length.depthOffsetU}
          onCommit={(u) => u !== null && change({ depthOffsetU: u }, 'depthU')}
        />
      </div>
      <QuantityField
        label={t('panels.length.endU')}
        rule={RULES.pixelU}
        value={length.endpointU}
        onCommit={(u) => u !== null && change({ endpointU: u }, 'endU')}
      />
    </Group>
  );
}
