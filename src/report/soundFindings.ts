import { expanded, isAvailable, type Reported } from '../core/estimate';
import type { Result } from '../shot/result';
import { showPercent, showQuantity } from '../text/show';
import { t } from '../text/text';
import { type Finding, type Line, line, reading, reasonLine, timeSymbol } from './line';

/** What the sound track tells beside the film. */
export function soundFindings(
  sound: NonNullable<Result['sound']>,
  speedUnit: string,
): readonly Finding[] {
  if ('unavailable' in sound) {
    return [
      { name: t('report.findings.sound'), mark: 'sound', lines: [reasonLine(sound.unavailable)] },
    ];
  }
  const { burst, minusFilm, agrees, impact, meanSpeed } = sound;
  return [
    {
      name: t('report.findings.burstHeard'),
      mark: 'burst-heard',
      lines: [
        reading(burst, 'time', 'ms'),
        ...(isAvailable(burst) ? [againstFilm(minusFilm, agrees)] : []),
      ],
    },
    {
      name: t('report.findings.impactHeard'),
      mark: 'impact-heard',
      lines: [reading(impact, 'time', 'ms')],
    },
    {
      name: t('report.findings.meanSpeed'),
      mark: 'mean-speed',
      lines: [reading(meanSpeed, 'speed', speedUnit)],
    },
  ];
}

const VERDICTS = { true: 'yes', false: 'no', null: 'unknown' } as const;

function againstFilm(minusFilm: Reported, agrees: boolean | null): Line {
  if (!isAvailable(minusFilm)) return reasonLine(minusFilm.unavailable);
  const { value, u } = expanded(minusFilm, minusFilm.value < 0 ? -1 : 1);
  return line('report.findings.againstFilm', {
    verdict: VERDICTS[`${agrees}`],
    apart: showQuantity({ value, u }, 'time', timeSymbol(Math.max(value, u))),
    early: minusFilm.value < 0 ? 'yes' : 'no',
    coverage: showPercent(minusFilm.coverage),
  });
}
