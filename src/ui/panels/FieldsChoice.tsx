import type { OpenFilm } from '../../app/filmStore';
import type { FootageInfo, Reading } from '../../core/film';
import { useDesk } from '../desk';
import { ChoiceField } from '../fields/ChoiceField';
import { WarningBox } from '../shell/Notices';
import { Fold } from './Panel';

const ORDERS = {
  topFirst: 'lines 0, 2, 4 … first',
  bottomFirst: 'lines 1, 3, 5 … first',
} as const;

const CHOICES: readonly { readonly value: Reading['fields']; readonly label: string }[] = [
  { value: 'auto', label: 'As the file says' },
  { value: 'whole', label: 'Whole frames, whatever the file says' },
  { value: 'topFirst', label: `Fields, ${ORDERS.topFirst}` },
  { value: 'bottomFirst', label: `Fields, ${ORDERS.bottomFirst}` },
];

/** What the file says of its fields and grey levels. */
export function fieldFacts({
  interlaced: { stated, separated },
  levels,
  bitDepth,
}: FootageInfo): readonly (readonly [name: string, value: string])[] {
  const scan = stated === null ? 'whole frames' : `interlaced, ${ORDERS[stated]}`;
  const read = separated === null ? '' : '; each field is a frame here';
  const isLimited = levels.white < 2 ** bitDepth - 1;
  return [
    ['Scan', `${scan}${read}`],
    [
      'Black and white',
      `${levels.black} and ${levels.white}${isLimited ? ' (limited range)' : ''}`,
    ],
  ];
}

/** Whether frames are taken apart into fields. */
export function FieldsChoice({ film }: { readonly film: OpenFilm }) {
  const { readFields } = useDesk().session;
  const { stated, separated } = film.info.interlaced;
  return (
    <>
      {stated !== null && separated === null && (
        <WarningBox
          reason={{
            code: 'fieldsWoven',
            message:
              'The file says that it is interlaced, and its frames are left whole: each shows two moments.',
            remedy: 'Have the fields separated, unless the camera took whole frames.',
          }}
        />
      )}
      <Fold title="Interlaced film" opened={stated !== null || separated !== null}>
        <p class="muted">
          Interlaced film shows two moments in each frame, one in every other line. Separated, each
          field is a frame: state the rate in fields a second. The lines between are filled in from
          those beside them.
        </p>
        <ChoiceField
          label="Frames are"
          value={film.reading.fields}
          choices={CHOICES}
          hint="Changing this counts frames anew: frames left out, centres put by hand and lost frames are forgotten."
          onChange={(fields) => void readFields(fields)}
        />
      </Fold>
    </>
  );
}
