import type { OpenFilm } from '../../app/filmStore';
import { type FootageInfo, fieldsReason, type Reading } from '../../core/film';
import { t } from '../../text/text';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { Fold } from '../panels/Panel';
import { WarningBox } from '../shell/Notices';

/** What the file says of its fields and grey levels. */
export function fieldFacts({
  interlaced: { stated, separated },
  levels,
  bitDepth,
}: FootageInfo): readonly (readonly [name: string, value: string])[] {
  const scan =
    stated === null
      ? t('reading.scan.whole')
      : t('reading.scan.interlaced', { order: t(`reading.fields.order.${stated}`) });
  const [black, white] = [String(levels.black), String(levels.white)];
  const isLimited = levels.white < 2 ** bitDepth - 1;
  return [
    [t('reading.scan.name'), separated === null ? scan : t('reading.scan.separated', { scan })],
    [
      t('reading.levels.name'),
      t(isLimited ? 'reading.levels.limited' : 'reading.levels.full', {
        black,
        white,
      }),
    ],
  ];
}

const separatedAs = (order: 'topFirst' | 'bottomFirst') => ({
  value: order,
  label: t('reading.fields.separated', { order: t(`reading.fields.order.${order}`) }),
});

/** What has to be known of interlaced film, where it is. */
export function FieldsWarning({ info }: { readonly info: FootageInfo }) {
  const reason = fieldsReason(info);
  return reason && <WarningBox reason={reason} />;
}

/** Whether frames are taken apart into fields. */
export function FieldsChoice({ film }: { readonly film: OpenFilm }) {
  const { readFields } = useDesk().session;
  const choices: readonly { readonly value: Reading['fields']; readonly label: string }[] = [
    { value: 'auto', label: t('reading.fields.auto') },
    { value: 'whole', label: t('reading.fields.whole') },
    separatedAs('topFirst'),
    separatedAs('bottomFirst'),
  ];
  const reason = fieldsReason(film.info);
  return (
    // Opened anew where the next film has something to be known.
    <Fold key={reason?.code} title={t('reading.fields.title')} opened={reason !== null}>
      <p class="muted">{t('reading.fields.what')}</p>
      <ChoiceField
        label={t('reading.fields.label')}
        value={film.reading.fields}
        choices={choices}
        hint={t('reading.fields.hint')}
        onChange={(fields) => void readFields(fields)}
      />
    </Fold>
  );
}
