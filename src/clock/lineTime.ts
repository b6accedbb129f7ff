import type { Estimate } from '../core/estimate';
import { failure, type Outcome, success } from '../core/reason';
import { median } from '../core/statistics';
import type { Readout } from '../shot/schema';
import { type Bands, gatherBands, strongestWaves } from './bands';
import { FLICKER_SHARE, noFlicker, tooFewFlickers } from './flicker';
import type { LampProfile } from './lampProfile';
import { fitWave, type WaveFit } from './waveFit';

type Direction = Readout['direction'];

/** A camera's readout as a flickering lamp shows it. */
export interface LineTimeReport {
  /** Where the lines run; of no meaning where the shutter is not seen to roll. */
  readonly direction: Direction;
  /** s a line, never negative. */
  readonly lineTime: Estimate;
  /** False: the line time agrees with that of a global shutter, zero, within its uncertainty. */
  readonly rolls: boolean;
  /** The direction was taken as stated, because these frames show it as well the other way round. */
  readonly directionAssumed: boolean;
  /** Amplitude of the flicker over the mean brightness. */
  readonly contrast: number;
  /** The lamp's frequency on the film's clock, Hz, and whether it agrees with that stated. */
  readonly frequencyCheck: { readonly measured: Estimate; readonly agrees: boolean };
  readonly frames: number;
}

const FEWEST_FRAMES = 8;
/** The film's own clock may be off from the stated one by this share before the flicker is not found any more. */
const CLOCK_SHARE = 0.005;
/** A clock that keeps this share is right. */
const CLOCK_RELATIVE_U = 1e-4;
/** Reading all lines takes at most so many frame intervals. */
const MOST_INTERVALS = 2;
/** Bands turn by less than this from one to the next, rad: the phase stays unambiguous. */
const MOST_TURN = Math.PI / 2;
/** The flicker must explain this many times what chance would (F statistic). */
const FLICKER_OVER_CHANCE = 50;
/** Standard uncertainties from zero from which a slope counts as one. */
const SLOPE_OVER_U = 3;
/** Fall of chi-square from which one sense of the readout is told from the other: five standard deviations. */
const SENSE_GAIN = 25;

/**
 * Line time of a rolling shutter from a lamp that flickers with the mains, or a wall lit by it: the lamp's light is
 * periodic, each line samples it at its own time, so that bands run across the lines and drift from frame to frame.
 * `times`: mid-exposure of each profile's frame at one and the same line, s; they may be uneven. `flicker`: the
 * lamp's frequency, Hz, twice that of the mains. `assumed`: the readout's direction, taken only where the frames
 * leave it open. The exposure weakens the bands but moves none.
 * Failures: `profilesUneven`, `lampTooShort`, `noFlicker`, `bandsStandStill`, `directionOpen`.
 */
export function measureLineTime(
  profiles: readonly LampProfile[],
  times: ArrayLike<number>,
  flicker: Estimate,
  assumed: Direction | null = null,
): Outcome<LineTimeReport> {
  const [first] = profiles;
  const even = profiles.every(
    ({ rows, columns }) =>
      rows.length === first?.rows.length && columns.length === first.columns.length,
  );
  if (first === undefined || !even || times.length !== profiles.length) {
    return failure(
      'profilesUneven',
      `The ${profiles.length} frames of the lamp and their ${times.length} times do not match, or the frames differ in size.`,
      'Read the clip of the lamp again, whole.',
    );
  }
  const at = Float64Array.from(times);
  const duration = (at.at(-1) as number) - (at[0] as number);
  const tooShort = tooFewFlickers(
    profiles.length < FEWEST_FRAMES ? 0 : Math.max(0, duration * flicker.value),
  );
  if (tooShort !== null) return tooShort;

  const alongRows = lookAlong(
    gatherBands(
      profiles.map(({ rows }) => rows),
      at,
    ),
    flicker,
  );
  const alongColumns = lookAlong(
    gatherBands(
      profiles.map(({ columns }) => columns),
      at,
    ),
    flicker,
  );
  const slopeOf = (seen: Outcome<Seen>) =>
    seen.ok ? Math.abs(seen.value.fit.slope) / seen.value.fit.slopeU : -1;
  const across = slopeOf(alongColumns);
  // Rows read one after the other leave the columns alike: their slope is then within its uncertainty of none.
  const upright = alongRows.ok ? across <= Math.max(SLOPE_OVER_U, slopeOf(alongRows)) : across < 0;
  const seen = upright ? alongRows : alongColumns;
  if (!seen.ok) return seen;
  const senses: readonly [Direction, Direction] = upright ? ['down', 'up'] : ['right', 'left'];
  return reportOf(seen.value, senses, flicker, profiles.length, assumed);
}

/** The wave found across the lines, and the best one that runs the other way. */
interface Seen {
  readonly fit: WaveFit;
  readonly other: WaveFit | null;
}

function lookAlong(bands: Bands, flicker: Estimate): Outcome<Seen> {
  const { times } = bands;
  const reach = Math.max(4 * flicker.u, CLOCK_SHARE * flicker.value);
  const duration = (times.at(-1) as number) - (times[0] as number);
  const steps = Math.ceil(4 * reach * duration);
  const frequencies = Array.from(
    { length: 2 * steps + 1 },
    (_, i) => flicker.value + ((i - steps) * reach) / Math.max(1, steps),
  );
  const interval = median(times.slice(1).map((t, i) => t - (times[i] as number)));
  const lines = bands.count * bands.size;
  const mostSlope = Math.min(
    (2 * Math.PI * flicker.value * MOST_INTERVALS * interval) / lines,
    MOST_TURN / bands.size,
  );
  const { rising, falling } = strongestWaves(bands, frequencies, mostSlope);
  const fits = [fitWave(bands, rising), fitWave(bands, falling)]
    .filter((fit) => fit !== null)
    // A fit that wandered out of what was searched has found no flicker.
    .filter(
      ({ frequency, slope }) =>
        Math.abs(frequency - flicker.value) < 2 * reach && Math.abs(slope) < 1.2 * mostSlope,
    )
    .sort((a, b) => a.squares - b.squares);
  const [fit, other = null] = fits;
  const clear =
    fit !== undefined &&
    bands.mean > 0 &&
    (fit.explained / (1 - fit.explained)) * fit.dof > FLICKER_OVER_CHANCE &&
    fit.explained > FLICKER_SHARE;
  if (clear) return success({ fit, other });
  return metAlike(times, flicker.value) > 0.9 ? bandsStandStill() : noFlicker();
}

/** How much alike the lamp's phases are that the frames meet: 1 all the same, 0 spread evenly. */
function metAlike(times: Float64Array, frequency: number): number {
  let c = 0;
  let s = 0;
  for (const t of times) {
    c += Math.cos(2 * Math.PI * frequency * t);
    s += Math.sin(2 * Math.PI * frequency * t);
  }
  return Math.hypot(c, s) / times.length;
}

const bandsStandStill = (): Outcome<never> =>
  failure(
    'bandsStandStill',
    "Every frame meets the lamp at the same moment of its flicker, so its bands cannot be told from the scene's own light and shade.",
    'Film the lamp at a frame rate that does not divide its flicker, or for longer.',
  );

function reportOf(
  { fit, other }: Seen,
  [onwards, backwards]: readonly [Direction, Direction],
  flicker: Estimate,
  frames: number,
  assumed: Direction | null,
): Outcome<LineTimeReport> {
  const rolls = Math.abs(fit.slope) > SLOPE_OVER_U * fit.slopeU;
  const against = other !== null && other.slope * fit.slope < 0 ? other : null;
  const open =
    rolls &&
    against !== null &&
    ((against.squares - fit.squares) / fit.squares) * fit.dof < SENSE_GAIN;
  const stated = assumed === onwards || assumed === backwards ? assumed : null;
  if (open && stated === null) {
    return failure(
      'directionOpen',
      'From these frames the lines may as well be read in either direction: the lamp flickers a whole number of times in two frames.',
      'State the direction of readout, or film the lamp at another frame rate.',
    );
  }
  const seenDirection = fit.slope < 0 ? backwards : onwards;
  const measured = { value: fit.frequency, u: fit.frequencyU };
  const perRadian = 1 / (2 * Math.PI * flicker.value);
  const value = Math.abs(fit.slope) * perRadian;
  return success({
    direction: open && stated !== null ? stated : seenDirection,
    lineTime: {
      value,
      u: Math.hypot(fit.slopeU * perRadian, (value * flicker.u) / flicker.value),
    },
    rolls,
    directionAssumed: open,
    contrast: fit.contrast,
    frequencyCheck: {
      measured,
      agrees:
        Math.abs(measured.value - flicker.value) <=
        3 * Math.hypot(measured.u, flicker.u, CLOCK_RELATIVE_U * flicker.value),
    },
    frames,
  });
}
