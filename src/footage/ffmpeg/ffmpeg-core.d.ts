/** The package has no types of its own; these are the parts used here. */
declare module '@ffmpeg/core' {
  /** An Emscripten module. */
  export interface FFmpegCore {
    readonly FS: CoreFileSystem;
    /** Runs `ffmpeg` to its end, blocking; returns its exit code. */
    exec(...args: string[]): number;
    /** Runs `ffprobe`, blocking. It sets no exit code. */
    ffprobe(...args: string[]): number;
    setLogger(logger: (line: { readonly type: string; readonly message: string }) => void): void;
    /** `ffmpeg` stops with an error once it has run for so long, ms. May be moved while it runs. */
    setTimeout(ms: number): void;
    /** Forgets the exit code and the limit of the run before. */
    reset(): void;
  }

  export interface FFmpegCoreOptions {
    instantiateWasm(
      imports: WebAssembly.Imports,
      received: (instance: WebAssembly.Instance) => void,
    ): object;
  }

  /** Bytes are handed over as a view on the core's memory (or on a buffer of its own). */
  type Transfer = (
    stream: object,
    buffer: Uint8Array,
    offset: number,
    length: number,
    position: number,
  ) => number;

  interface StreamOperations {
    open?(stream: { seekable: boolean }): void;
    close?(stream: object): void;
    read?: Transfer;
    write?: Transfer;
    llseek?(stream: object, offset: number, whence: number): number;
  }

  export interface CoreFileSystem {
    mkdir(path: string): void;
    createFile(
      folder: string,
      name: string,
      properties: object,
      canRead: boolean,
      canWrite: boolean,
    ): { stream_ops: StreamOperations };
    makedev(major: number, minor: number): number;
    registerDevice(device: number, operations: StreamOperations): void;
    mkdev(path: string, device: number): void;
    unlink(path: string): void;
    readonly ErrnoError: new (errno: number) => Error;
  }

  const createFFmpegCore: (options: FFmpegCoreOptions) => Promise<FFmpegCore>;
  export default createFFmpegCore;
}
