import { cpus } from 'node:os';
import type { Stage } from '../../../src/reduction/types';
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
      nameOf(clip),
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

## Where the time goes

Middle times, s. The *pass* goes through the whole film; the *closer look* takes still scene, rough places and seal from the frames in which something moves and those around them; *centres* are fitted twice each; the *rest* is fit and budget, and the wait for the damage check where that is not over by then.

| film | pass | closer look | centres | rest |
|---|---|---|---|---|
${clips.map(stageRow).join('\n')}

## What bounds it

As samples of single runs on two cores showed it:

- **Decoding alone**: Chromium's decoders cost more than native ffmpeg, because each frame is a word back and forth between decoder and the thread that asks, and its luma is copied into memory of its own. In the film of 20 000 small frames a good quarter of the cores' time went unused while it was gone through; asking for frames one batch ahead did not change that. ffmpeg's and OpenCV's packages are built without WebAssembly's SIMD and threads: two ffmpeg side by side decode Motion-JPEG.
- **H.264 is decoded twice**: what is measured of it is held against ffmpeg's reading, from the key frame before the ball on (640 of the 2000 frames; the closer look waits for cores meanwhile).
- **The first centre** waits for the whole film: the still scene is learnt from frames spread over all of it. The ball is in the middle of these films: native decoding alone takes half of its time until it shows.
- **The pass** over the film takes longer than decoding alone: every frame's change is measured and its row of the streak image read, by one thread beside the decoder.
- **The closer look** is at some 440 frames, of which 40 MiB are held from the pass; the others are decoded again, FFV1's of 16 bit nearly all.
- **Centres**: 26 of them, fitted twice, on both cores. The native script does nothing of the kind: it takes moments of what differs.
- **Memory given back and taken anew** took about a seventh of all core time where it was sampled, in page faults and the flushes between cores that come with them; native programs use their few buffers over and over. On a machine on which that was cheaper an earlier version came to 0.50 (H.264), 0.54 (VP9), 0.41 (Motion-JPEG) and 0.56 (FFV1).
`;
}

/** Of one film: what passes between the last words of its stages. */
function stageRow({ clip, runs }: ClipRuns): string {
  const until = (stage: Stage) => (run: Run) => run.reduce.stages[stage] ?? Number.NaN;
  const ends = [() => 0, until('background'), until('track'), until('centres'), total];
  const parts = ends.slice(1).map((end, i) => {
    const begin = ends[i] as (run: Run) => number;
    return middle(runs.map((run) => end(run) - begin(run))).toFixed(2);
  });
  return row([nameOf(clip), ...parts]);
}

const nameOf = ({ label, frames }: BenchClip): string =>
  label + (frames === 2000 ? '' : `, ${frames} frames`);

/** How often each film was run, in the order of the table. */
const runCounts = (clips: readonly ClipRuns[]): string =>
  clips.map(({ runs }) => runs.length).join(', ');

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

const velocity = (timing: ReduceTiming | undefined): string =>
  timing?.velocity == null || timing.velocityU == null
    ? 'none'
    : `${timing.velocity.toFixed(2)} ± ${timing.velocityU.toFixed(2)}`;
