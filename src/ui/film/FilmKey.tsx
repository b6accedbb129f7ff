import { t } from '../../text/text';
import { markPaths, seedMark } from './marks';
import type { FilmPosition, FilmSeed } from './props';

interface FilmKeyProps {
  readonly positions: readonly FilmPosition[];
  readonly seeds: readonly FilmSeed[];
  readonly currentFrame: number;
  readonly factor: number;
}

const PLACE = { left: 6, top: 6 };
const USED = markPaths([{ ...PLACE, used: true, manual: false }]).used;
const REFUSED = markPaths([{ ...PLACE, used: false, manual: false }]).refused;
const MANUAL = markPaths([{ ...PLACE, used: true, manual: true }]).manual;

/** Says what the marks on the film mean: only those there are. */
export function FilmKey({ positions, seeds, currentFrame, factor }: FilmKeyProps) {
  const found = positions.filter(({ x }) => x !== null);
  if (found.length === 0 && seeds.length === 0) return null;
  const current = found.find(({ frame }) => frame === currentFrame);
  return (
    <ul class="film-key">
      {found.some(({ used, manual }) => used && !manual) && (
        <Entry class="film-mark-used" d={USED} text={t('film.key.used')} />
      )}
      {found.some(({ used, manual }) => used && manual) && (
        <Entry class="film-mark-manual" d={MANUAL} text={t('film.key.byHand')} />
      )}
      {found.some(({ used }) => !used) && (
        <Entry class="film-mark-refused" d={REFUSED} text={t('film.key.notUsed')} />
      )}
      {seeds.length > 0 && (
        <Entry
          class="film-seed"
          d={seedMark([PLACE.left, PLACE.top], false)}
          text={t('film.key.seed')}
        />
      )}
      {current !== undefined && current.ux !== null && current.uy !== null && (
        <li>
          <svg width="16" height="12" aria-hidden="true">
            <ellipse class="film-ellipse film-ellipse-used" cx="8" cy="6" rx="7" ry="4" />
          </svg>
          {t('film.key.u', { factor })}
        </li>
      )}
    </ul>
  );
}

function Entry(props: { readonly class: string; readonly d: string; readonly text: string }) {
  return (
    <li>
      <svg width="12" height="12" aria-hidden="true" class={props.class}>
        <path class="line" d={props.d} />
      </svg>
      {props.text}
    </li>
  );
}
