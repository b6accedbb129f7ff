import type { GreyFrame } from '../core/frame';

/** What a frame of a lamp, or of a wall lit by it, tells of the readout: mean grey value of each row and of each column. */
export interface LampProfile {
  readonly rows: Float64Array;
  readonly columns: Float64Array;
}

function lampProfile({ data, width, height }: GreyFrame): LampProfile {
  const rows = new Float64Array(height);
  const columns = new Float64Array(width);
  for (let y = 0, p = 0; y < height; y++) {
    let sum = 0;
    for (let x = 0; x < width; x++, p++) {
      const grey = data[p] as number;
      sum += grey;
      columns[x] = (columns[x] as number) + grey;
    }
    rows[y] = sum / width;
  }
  for (let x = 0; x < width; x++) columns[x] = (columns[x] as number) / height;
  return { rows, columns };
}

/** The profiles of a stream of frames in their order; `onFrame` hears how many have been read. */
export async function readLamp(
  frames: AsyncIterable<GreyFrame>,
  onFrame: (done: number) => void = () => undefined,
): Promise<LampProfile[]> {
  const profiles: LampProfile[] = [];
  for await (const frame of frames) {
    profiles.push(lampProfile(frame));
    onFrame(profiles.length);
  }
  return profiles;
}
