import { findOnset } from '../../../src/sound/onset';
import { shareRow } from '../figures';
import { randomStream } from '../render/random';
import { average, rootMeanSquare } from '../statistics';
import type { ReportRow, ValidationClass } from '../types';
import { renderSound, type SoundKind } from './soundTrack';

/** Sets its random numbers apart from other classes'. */
const KEY = 17;
const TRACKS_A_CHUNK = 100;
const CHUNKS_A_KIND = 10;
const COVERAGE = 0.95;
const LIMIT = { low: 93, high: 97 };
const MOST_REFUSED = 2;

interface JudgedKind extends SoundKind {
  /** Limit of the root-mean-square error, us; null: for information. */
  readonly mostError: number | null;
}

const heard = (signalToNoise: number, mostError: number | null): JudgedKind => ({
  name: `${signalToNoise} dB`,
  signalToNoise,
  overloaded: false,
  mostError,
});
const HEARD = [heard(10, null), heard(20, 40), heard(30, 40), heard(40, 40)];
/** What must be refused. */
const USELESS: readonly SoundKind[] = [
  { name: 'noise only', signalToNoise: null, overloaded: false },
  { name: 'overloaded', signalToNoise: 30, overloaded: true },
];
const KINDS = [...HEARD, ...USELESS];

interface Timed {
  readonly refused: string | null;
  /** us */
  readonly error: number;
  readonly u: number;
  readonly held: boolean;
}

interface Chunk {
  readonly kind: number;
  readonly timed: readonly Timed[];
}

/** When a sudden sound begins, told from the sound track alone. */
export const sound: ValidationClass<Chunk> = {
  name: 'sound',
  chunks: KINDS.length * CHUNKS_A_KIND,
  async run(chunk, seed) {
    const kind = Math.floor(chunk / CHUNKS_A_KIND);
    const timed = Array.from({ length: TRACKS_A_CHUNK }, (_, i) =>
      time(KINDS[kind] as SoundKind, seed, chunk, i),
    );
    return { kind, timed };
  },
  conclude(records) {
    const of = (kind: SoundKind) =>
      records.filter((one) => KINDS[one.kind] === kind).flatMap(({ timed }) => timed);
    return {
      rows: [
        ...HEARD.flatMap((kind) => heardRows(kind, of(kind))),
        ...USELESS.map(({ name }, i) =>
          shareRow(
            name,
            'refused',
            of(USELESS[i] as SoundKind).map(({ refused }) => refused !== null),
            { low: 100 - MOST_REFUSED },
          ),
        ),
      ],
      plots: [],
      text: `Tracks of a quarter of a second at 44.1 or 48 kHz, 16 bit, searched whole: a crack with a front of 5 to 60 us, ring of 0.5 to 5 kHz and rattle, up to three echoes 0.6 to 12 ms later and softer than it, in hiss, rumble and hum mixed as drawn. Signal to noise: root mean square of the first millisecond over that of the noise. A track with no sound, or with its peaks cut off, has to be refused. Mean error of those timed, us: ${HEARD.map((kind) => `${kind.name} ${average(told(of(kind)).map(({ error }) => error)).toFixed(1)}`).join(', ')}.`,
    };
  },
};

const told = (timed: readonly Timed[]): Timed[] => timed.filter(({ refused }) => refused === null);

function time(kind: SoundKind, seed: number, chunk: number, i: number): Timed {
  const { samples, sampleRate, onset } = renderSound(kind, randomStream(seed, KEY, chunk, i));
  const found = findOnset(
    { samples, sampleRate, firstSampleTime: 0 },
    { between: null, coverage: COVERAGE, what: 'burst' },
  );
  if (!found.ok) return { refused: found.reason.code, error: 0, u: 0, held: false };
  const { value, u, interval } = found.value;
  return {
    refused: null,
    error: 1e6 * (value - onset),
    u: 1e6 * u,
    held: interval[0] <= onset && onset <= interval[1],
  };
}

function heardRows({ name, mostError }: JudgedKind, all: readonly Timed[]): ReportRow[] {
  const timed = told(all);
  const rms = rootMeanSquare(timed.map(({ error }) => error));
  const limit = mostError === null ? {} : { high: mostError };
  return [
    shareRow(
      name,
      'refused',
      all.map(({ refused }) => refused !== null),
      { high: MOST_REFUSED },
    ),
    {
      ...{ of: name, figure: 'RMS error, us', value: rms, unit: '', limit, n: timed.length },
      passed: timed.length > 0 && rms <= (mostError ?? rms),
    },
    shareRow(
      name,
      '95 % interval holds the onset',
      timed.map(({ held }) => held),
      LIMIT,
    ),
  ];
}
