import { expanded, isAvailable, type Reported } from '../core/estimate';
import { formatQuantity, percent } from '../core/format';
import type { Result } from '../shot/result';
import { alarm, type Finding, type Line, line, reading, reasonLine, timeSymbol } from './line';

/** What the sound track tells beside the film. */
export function soundFindings(
  sound: NonNullable<Result['sound']>,
  speedUnit: string,
): readonly Finding[] {
  if ('unavailable' in sound) {
    return [{ name: 'Sound', mark: 'sound', lines: [reasonLine(sound.unavailable)] }];
  }
  const { burst, minusFilm, agrees, impact, meanSpeed } = sound;
  return [
    {
      name: 'Burst heard',
      mark: 'burst-heard',
      lines: [
        reading(burst, 'time', 'ms'),
        ...(isAvailable(burst) ? [againstFilm(minusFilm, agrees)] : []),
      ],
    },
    {
      name: 'Impact on the backstop heard',
      mark: 'impact-heard',
      lines: [reading(impact, 'time', 'ms')],
    },
    {
      name: 'Mean speed to the backstop',
      mark: 'mean-speed',
      lines: [reading(meanSpeed, 'speed', speedUnit)],
    },
  ];
}

function againstFilm(minusFilm: Reported, agrees: boolean | null): Line {
  if (!isAvailable(minusFilm)) return reasonLine(minusFilm.unavailable);
  const { value, u } = expanded(minusFilm, minusFilm.value < 0 ? -1 : 1);
  const apart = formatQuantity({ value, u }, 'time', timeSymbol(Math.max(value, u)));
  const side = `${apart} ${minusFilm.value < 0 ? 'before' : 'after'} the burst seen on the film (${percent(minusFilm.coverage)})`;
  if (agrees === false) {
    return line(
      alarm(
        `It does not agree with the film: heard ${side}. Check the offset between sound and picture and the distance of the microphone.`,
      ),
    );
  }
  return line(agrees === true ? `It agrees with the film: heard ${side}.` : `Heard ${side}.`);
}
