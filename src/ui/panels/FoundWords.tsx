import { missingInputs, type ShotDraft } from '../../app/draft';
import type { OpenFilm } from '../../app/filmStore';
import { codecWords, containerWords } from '../../text/names';
import { showCount, showList, showNumberAt } from '../../text/show';
import { t } from '../../text/text';

/** What opening a film found, and what it still needs from a person, in sentences. */
export function FoundWords(props: { readonly film: OpenFilm; readonly draft: ShotDraft }) {
  const { film, draft } = props;
  const { info } = film;
  const missing = missingInputs(draft);
  return (
    <div role="status" data-role="found">
      <p>
        {t('panels.found.film', {
          container: containerWords(info.container),
          codec: codecWords(info.codec),
          width: String(info.width),
          height: String(info.height),
          frames: showCount(info.frameCount),
          sound: info.hasAudio ? 'yes' : 'no',
        })}{' '}
        {rateWords(film, draft)}
      </p>
      <p>
        {missing.length === 0
          ? t('panels.found.nothingNeeded')
          : t('panels.found.needed', {
              list: showList(
                missing.map(({ step, reason }) =>
                  t('panels.found.need', {
                    what: reason.code,
                    step: t(`shell.steps.${step}`),
                  }),
                ),
              ),
            })}
      </p>
    </div>
  );
}

function rateWords({ info, timestamps }: OpenFilm, { timing }: ShotDraft): string {
  const { playbackRate } = info;
  if (playbackRate === null || timestamps === null) return t('panels.found.noRate');
  const rate = t('panels.framesPerSecond', { rate: showNumberAt(playbackRate, 5) });
  return t(
    timing.source === 'containerTimestamps' ? 'panels.found.ownClock' : 'panels.found.playback',
    { rate },
  );
}
