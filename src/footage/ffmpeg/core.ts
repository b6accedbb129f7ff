import createFFmpegCore, { type CoreFileSystem, type FFmpegCore } from '@ffmpeg/core';
import { ExitframeError, reasonOf } from '../../core/reason';
import type { SyncReader } from '../reader';

export interface CoreRun {
  readonly program: 'ffmpeg' | 'ffprobe';
  readonly args: readonly string[];
  /** Seen by the program as `/in/NAME`. */
  readonly inputs: Readonly<Record<string, SyncReader>>;
  /** Written by the program to `/out/NAME`; the bytes are lent, copy what is kept. */
  readonly outputs: Readonly<Record<string, (bytes: Uint8Array) => void>>;
  /** Gets each line it prints at once. */
  readonly hear?: (line: string) => void;
}

export interface CoreOutcome {
  /** 0: it went well. `ffprobe` has none and gives 0. */
  readonly exitCode: number;
  /** What it printed, the last lines of it. */
  readonly log: readonly string[];
}

/** A decoder that neither reads nor writes for so long counts as stalled, ms. */
const STALLED_AFTER = 60_000;
const LOG_LINES = 200;
const INPUT_OUTPUT_ERROR = 29; // EIO, as Emscripten numbers it
const NOT_SEEKABLE = 70; // ESPIPE
const FIRST_DEVICE = 80; // device numbers above those Emscripten gives out itself

/**
 * Runs the core, blocking this thread while it works. Inputs are read in slices and outputs
 * handed on as they are written, so memory stays bounded by what the caller keeps.
 *
 * Throws what a reader or an output threw, `decoderFailed` where the core broke down or stalled, or `outOfMemory`.
 */
export type RunCore = (run: CoreRun) => Promise<CoreOutcome>;

/** The core leaves by `abort`, which does not unwind its stack (11 KB a run): the hundredth run in one instance hangs. */
const RUNS_AN_INSTANCE = 24;

/** Runs the core once, in an instance of its own: about 10 ms of a compiled module. */
export const runCore = async (module: WebAssembly.Module, run: CoreRun): Promise<CoreOutcome> =>
  runIn(await startCore(module), run);

/**
 * Runs the core time and again in few instances: the garbage collector sees nothing of the tens of MiB that each takes,
 * and lets them lie by the dozen.
 */
export function runCoreAgain(module: WebAssembly.Module): RunCore {
  let kept: { readonly instance: CoreInstance; runs: number } | null = null;
  return async (run) => {
    const mine = kept ?? { instance: await startCore(module), runs: 0 };
    kept = null;
    const outcome = runIn(mine.instance, run);
    mine.runs += 1;
    // Who knows what a run that went wrong leaves behind: it is its instance's last.
    const wentWell = outcome.exitCode === 0 && outcome.log.length === 0;
    if (wentWell && mine.runs < RUNS_AN_INSTANCE) kept = mine;
    return outcome;
  };
}

function runIn({ core, hasRunOut }: CoreInstance, run: CoreRun): CoreOutcome {
  core.reset();
  const log: string[] = [];
  core.setLogger(({ message }) => {
    if (message === 'Aborted()') return; // how the core leaves, also after success
    run.hear?.(message);
    log.push(message);
    if (log.length > LOG_LINES) log.shift();
  });

  const started = performance.now();
  let deadline = 0;
  const alive = () => {
    deadline = performance.now() - started + STALLED_AFTER;
    core.setTimeout(deadline);
  };
  const faults: unknown[] = [];
  const guarded = (transfer: () => number): number => {
    alive();
    try {
      return transfer();
    } catch (error) {
      faults.push(error);
      throw new core.FS.ErrnoError(INPUT_OUTPUT_ERROR);
    }
  };

  for (const [name, reader] of Object.entries(run.inputs)) {
    mountInput(core.FS, name, reader, guarded);
  }
  Object.entries(run.outputs).forEach(([name, take], i) => {
    mountOutput(core.FS, name, FIRST_DEVICE + i, take, guarded);
  });

  alive();
  const exitCode = execute(core, run);
  for (const name of Object.keys(run.inputs)) core.FS.unlink(`/in/${name}`);
  for (const name of Object.keys(run.outputs)) core.FS.unlink(`/out/${name}`);
  if (faults.length > 0) throw faults[0];
  if (exitCode !== 0 && hasRunOut()) throw outOfMemory();
  if (exitCode !== 0 && performance.now() - started >= deadline) throw stalled();
  return { exitCode, log };
}

interface CoreInstance {
  readonly core: FFmpegCore;
  /** Whether it has been refused memory: it goes on then, and says no more than that something failed. */
  hasRunOut(): boolean;
}

async function startCore(module: WebAssembly.Module): Promise<CoreInstance> {
  let ranOut = false;
  const watchMemory = (memory: WebAssembly.Memory) => {
    const grow = memory.grow.bind(memory);
    memory.grow = (pages) => {
      try {
        return grow(pages);
      } catch (error) {
        ranOut = true;
        throw error;
      }
    };
  };
  const core = await new Promise<FFmpegCore>((resolve, reject) => {
    createFFmpegCore({
      instantiateWasm(imports, received) {
        WebAssembly.instantiate(module, imports).then((instance) => {
          for (const part of Object.values(instance.exports)) {
            if (part instanceof WebAssembly.Memory) watchMemory(part);
          }
          received(instance);
        }, reject);
        return {};
      },
    }).then(resolve, reject);
  }).catch((error: unknown) => {
    throw error instanceof RangeError ? outOfMemory(error) : brokeDown(error);
  });
  core.FS.mkdir('/in');
  core.FS.mkdir('/out');
  return { core, hasRunOut: () => ranOut };
}

const outOfMemory = (cause?: unknown) =>
  new ExitframeError(
    'outOfMemory',
    'Memory ran out while the decoder ffmpeg worked.',
    'Close other tabs and programs, then try again; film with smaller frames needs less.',
    { cause },
  );

const brokeDown = (cause: unknown) =>
  new ExitframeError(
    'decoderFailed',
    `The decoder ffmpeg broke down: ${reasonOf(cause).message}.`,
    'Try the clip in another format, or a shorter part of it.',
    { cause, values: { form: 'brokeDown', why: reasonOf(cause).message } },
  );

const stalled = () =>
  new ExitframeError(
    'decoderFailed',
    `The decoder ffmpeg has neither read nor given anything for ${STALLED_AFTER / 1000} s.`,
    'Try the clip in another format, or a shorter part of it.',
    { values: { form: 'stalled', seconds: `${STALLED_AFTER / 1000}` } },
  );

function execute(core: FFmpegCore, run: CoreRun): number {
  try {
    if (run.program === 'ffmpeg') return core.exec(...run.args);
    core.ffprobe(...run.args);
    return 0;
  } catch (error) {
    throw brokeDown(error);
  }
}

type Guard = (transfer: () => number) => number;

/** A file whose bytes are fetched when asked for, instead of lying in the core's memory. */
function mountInput(fs: CoreFileSystem, name: string, reader: SyncReader, guarded: Guard): void {
  const node = fs.createFile('/in', name, {}, true, false);
  Object.defineProperty(node, 'usedBytes', { get: () => reader.size, set: () => {} });
  node.stream_ops = {
    ...node.stream_ops,
    read: (_stream, buffer, offset, length, position) =>
      guarded(() => {
        const end = Math.min(position + length, reader.size);
        if (end <= position) return 0;
        buffer.set(reader.read(position, end), offset);
        return end - position;
      }),
  };
}

function mountOutput(
  fs: CoreFileSystem,
  name: string,
  major: number,
  take: (bytes: Uint8Array) => void,
  guarded: Guard,
): void {
  const device = fs.makedev(major, 0);
  fs.registerDevice(device, {
    open: (stream) => {
      stream.seekable = false;
    },
    close: () => {},
    write: (_stream, buffer, offset, length) =>
      guarded(() => {
        take(new Uint8Array(buffer.buffer, buffer.byteOffset + offset, length));
        return length;
      }),
    llseek: () => {
      throw new fs.ErrnoError(NOT_SEEKABLE);
    },
  });
  fs.mkdev(`/out/${name}`, device);
}

/** An output that gathers text. */
export function textOutput(): { take(bytes: Uint8Array): void; text(): string } {
  const decoder = new TextDecoder();
  const parts: string[] = [];
  return {
    take: (bytes) => parts.push(decoder.decode(bytes, { stream: true })),
    text: () => parts.join('') + decoder.decode(),
  };
}
