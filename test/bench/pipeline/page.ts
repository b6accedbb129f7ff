import { cpus } from 'node:os';
import type { ReportPlot } from '../../validate/types';
import type { BenchClip } from './clips';
import type { DecodeTiming, ReduceTiming } from './timings';

interface Run {
  readonly nativeDecode: { readonly seconds: number };
  readonly decode: DecodeTiming;
  readonly nativeReduce: { readonly seconds: number; readonly peak: number };
  readonly reduce: ReduceTiming;
  /** Most memory the browser held above what it held idle, MiB. */
  readonly growth: number;
}

export interface ClipRuns {
  readonly clip: BenchClip;
  readonly decoder: string;
  readonly runs: readonly Run[];
}

const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);
const middle = (values: readonly number[]): number =>
  sorted(values)[values.length >> 1] ?? Number.NaN;

/** Least, middle and largest. */
function spread(values: readonly number[], digits: number): string {
  const all = sorted(values);
  return [all[0], middle(values), all.at(-1)].map((one) => one?.toFixed(digits)).join(' / ');
}

/** Exponent p of cost going as quantity^p: slope of the logarithms' straight line. */
function exponent(points: readonly { readonly of: number; readonly cost: number }[]): number {
  const x = points.map(({ of }) => Math.log(of));
  const y = points.map(({ cost }) => Math.log(cost));
  const mean = (v: readonly number[]) => v.reduce((sum, one) => sum + one, 0) / v.length;
  const [mx, my] = [mean(x), mean(y)];
  const sxy = x.reduce((sum, one, i) => sum + (one - mx) * ((y[i] as number) - my), 0);
  return sxy / x.reduce((sum, one) => sum + (one - mx) ** 2, 0);
}

/** Time spent on what grows with the film: until the ball's track is known. */
const looked = ({ reduce }: Run): number => reduce.stages.track ?? Number.NaN;
/** The whole reduction but for the Monte Carlo check, which the film has no part in. */
const total = ({ reduce }: Run): number => reduce.seconds - reduce.trials;
const frames = ({ clip }: ClipRuns): number => clip.frames;
const pixels = ({ clip }: ClipRuns): number => clip.width * clip.height;

const costs = (
  points: readonly ClipRuns[],
  of: (point: ClipRuns) => number,
  time: (run: Run) => number,
) =>
  points
    .map((point) => ({ of: of(point), cost: middle(point.runs.map(time)) }))
    .sort((a, b) => a.of - b.of);

export function benchPlots(
  byLength: readonly ClipRuns[],
  bySize: readonly ClipRuns[],
): readonly ReportPlot[] {
  const plot = (
    file: string,
    title: string,
    label: string,
    points: readonly ClipRuns[],
    of: (point: ClipRuns) => number,
  ): ReportPlot => {
    const series = (name: string, time: (run: Run) => number): ReportPlot['series'][number] => ({
      name,
      points: costs(points, of, time).map(({ of: x, cost: y }) => ({ x, y, u: 0 })),
    });
    return {
      file,
      title,
      x: { label, log: true },
      y: { label: 'Time, s', log: true },
      limits: [],
      series: [
        series('reduction', total),
        series('until the track', looked),
        series('decoding', ({ decode }) => decode.seconds),
        series('native pipeline', ({ nativeReduce }) => nativeReduce.seconds),
      ],
    };
  };
  return [
    plot('length.svg', 'Cost by length, 512 x 128', 'Frames', byLength, frames),
    plot('size.svg', 'Cost by size, 2000 frames', 'Pixels a frame', bySize, pixels),
  ];
}

/** docs/bench.md of one run of the bench. */
export function benchPage(
  clips: readonly ClipRuns[],
  byLength: readonly ClipRuns[],
  bySize: readonly ClipRuns[],
): string {
  const [cpu] = cpus();
  const times = clips.map(({ clip, decoder, runs }) =>
    row([
      `${clip.label}, ${clip.width} x ${clip.height} x ${clip.frames}`,
      decoder,
      spread(
        runs.map(({ nativeDecode }) => nativeDecode.seconds),
        2,
      ),
      spread(
        runs.map(({ decode }) => decode.seconds),
        2,
      ),
      spread(
        runs.map(({ nativeReduce }) => nativeReduce.seconds),
        2,
      ),
      spread(
        runs.map(({ reduce }) => reduce.measured),
        2,
      ),
      spread(runs.map(total), 2),
      spread(
        runs.map(({ reduce }) => reduce.trials),
        2,
      ),
    ]),
  );
  const ratios = clips.map(({ clip, runs }) =>
    row([
      clip.label + (clip.frames === 2000 ? '' : `, ${clip.frames} frames`),
      spread(
        runs.map((run) => run.nativeDecode.seconds / run.decode.seconds),
        2,
      ),
      spread(
        runs.map((run) => run.nativeReduce.seconds / total(run)),
        2,
      ),
      spread(
        runs.map((run) => total(run) / run.nativeDecode.seconds),
        2,
      ),
      spread(
        runs.map(({ reduce }) => reduce.firstPoint),
        2,
      ),
      spread(
        runs.map(({ growth }) => growth),
        0,
      ),
      spread(
        runs.map(({ nativeReduce }) => nativeReduce.peak),
        0,
      ),
      velocity(runs[0]?.reduce),
    ]),
  );
  const slope = (
    points: readonly ClipRuns[],
    of: (p: ClipRuns) => number,
    time: (r: Run) => number,
  ) => exponent(costs(points, of, time)).toFixed(2);
  return `# What a film costs

Written by \`npm run bench -- pipeline\` on ${cpus().length} cores (${cpu?.model.trim() ?? 'unknown'}). Least / middle / largest of ${runCounts(clips)} runs (film by film), the tool and the native pipeline in turn; modules warm. The films are the first sample's shot (rendered), 12 000 frames a second, in the middle of a longer film.

The native pipeline is Debian's ffmpeg piping grey frames into a script with OpenCV for Python (\`test/bench/pipeline/native.py\`): difference from the median of the first 25 frames, threshold, moments of all that changed. It gives one place a frame, with no model of the ball, the blur or the noise, and no uncertainty; the tool does what it does for every film: scene, streak image, search, track, centres fitted to the limb, seal, fit, budget. The Monte Carlo check that follows is told beside it, and is in none of the ratios.

| film | decoder in the browser | native decoding, s | decoding, s | native pipeline, s | all centres known, s | result, s | Monte Carlo besides, s |
|---|---|---|---|---|---|---|---|
${times.join('\n')}

Ratios: above 1 the tool is faster, but for *result over native decoding*, which tells how many times as long as native decoding alone the whole reduction takes.

| film | decoding | reduction | result over native decoding | first centre, s | browser's memory above idle, MiB | native memory, MiB | exit velocity, m/s |
|---|---|---|---|---|---|---|---|
${ratios.join('\n')}

## Cost by length and size

![Cost by length](bench/length.svg) ![Cost by size](bench/size.svg)

Films besides those of the table were measured once each. Exponents (cost as quantity to the power; median times): by length, until the track is known ${slope(byLength, frames, looked)}, whole reduction ${slope(byLength, frames, total)}, decoding alone ${slope(byLength, frames, ({ decode }) => decode.seconds)}. By pixels a frame: until the track ${slope(bySize, pixels, looked)}, whole reduction ${slope(bySize, pixels, total)}, decoding alone ${slope(bySize, pixels, ({ decode }) => decode.seconds)}. What comes after the track is one cost for each frame of the flight, whatever the film's length: it makes the whole grow less than in proportion in short films.

## What bounds it

As profiles of single runs on two cores showed it:

- **Decoding alone**: Chromium's decoders cost more than native ffmpeg, because frames are handed out: of VP9's decoding two thirds of one core's time go into luma copied into memory of its own and passed to the thread that asked. ffmpeg's and OpenCV's packages are built without WebAssembly's SIMD and threads: two ffmpeg side by side decode Motion-JPEG at about half of the native speed.
- **H.264 is decoded twice**: what is measured of it is held against ffmpeg's reading, from the key frame before the ball on. Where that runs makes no difference to the whole: both cores are full.
- **The first centre** waits for the whole film: the still scene is learnt from frames spread over all of it.
- **The pass** over the film takes twice as long as decoding alone (VP9: 2.6 of 5.1 s): every frame's change is measured and its row of the streak image read, by one thread beside the decoder.
- **After the pass** (VP9): 1 s in which 124 frames are looked at closer, 1.4 s in which 26 centres are fitted twice, both on both cores. The native script does nothing of the kind: it takes moments of what differs.
- **FFV1, 16 bit**: the frames of the flight are more than the 40 MiB held of them, and are decoded again.
`;
}

/** How often each film was run, in the order of the table. */
const runCounts = (clips: readonly ClipRuns[]): string =>
  clips.map(({ runs }) => runs.length).join(', ');

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

const velocity = (timing: ReduceTiming | undefined): string =>
  timing?.velocity == null || timing.velocityU == null
    ? 'none'
    : `${timing.velocity.toFixed(2)} ± ${timing.velocityU.toFixed(2)}`;
