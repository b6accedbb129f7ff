/**
 * Has a decoder hold what it reads against the sums in it. Without, it passes over some that do not
 * agree; and what it finds damaged it patches up, says so and goes on as if all were well.
 */
export const WITH_SUMS = ['-err_detect', 'crccheck+bitstream+buffer'] as const;

/** What a decoder first said is wrong with what it decodes, and how many frames had come by then. */
interface Complaint {
  readonly said: string;
  readonly after: number;
}

/** Listens to a run that prints errors only; who is not its decoder speaks of the container. */
export class DamageWatch {
  complaint: Complaint | null = null;
  private readonly speaker: string;
  private readonly framesSoFar: () => number;

  /** `decoder`: ffmpeg's name of it. */
  constructor(decoder: string, framesSoFar: () => number) {
    this.speaker = `[${decoder} @`;
    this.framesSoFar = framesSoFar;
  }

  hear(line: string): void {
    if (!line.startsWith(this.speaker)) return;
    this.complaint ??= { said: line, after: this.framesSoFar() };
  }
}
