import { seriesBy } from '../figures';
import { type Recording, recordShot, type ShotRecord } from '../record';
import { type Random, randomStream } from '../render/random';
import type { LookKind, Shot } from '../shot';
import type { ClassReport, ValidationClass } from '../types';

/** A shot to be drawn and recorded. */
export interface Order extends LookKind {
  readonly sweep?: number;
  readonly crf?: number;
  readonly draw: (random: Random) => Shot;
  readonly boundEvery: number;
  readonly film?: Recording['film'];
}

/** A class of shots of one ball, a chunk an entry of `orders`. `key` sets its random numbers apart from other classes'. */
export function ballClass(
  name: string,
  key: number,
  orders: readonly (readonly Order[])[],
  conclude: (shots: readonly ShotRecord[]) => ClassReport,
): ValidationClass<readonly ShotRecord[]> {
  return {
    name,
    chunks: orders.length,
    async run(chunk, seed) {
      const records: ShotRecord[] = [];
      for (const [i, order] of (orders[chunk] ?? []).entries()) {
        records.push(await record(order, randomStream(seed, key, chunk, i)));
      }
      return records;
    },
    conclude: (records) => conclude(records.flat()),
  };
}

async function record(order: Order, random: Random): Promise<ShotRecord> {
  const { radius, contrastToNoise, surface, sweep = 0, crf = null, boundEvery, film } = order;
  const shot = order.draw(random);
  const frames = await recordShot(shot, { random, boundEvery, ...(film ? { film } : {}) });
  const noise = Math.abs(shot.contrast) / contrastToNoise;
  return { radius, contrastToNoise, surface, noise, sweep, crf, frames };
}

/** Both kinds of ball. */
export const SURFACES = ['even', 'matt'] as const;
export const bySurface = seriesBy(
  SURFACES,
  ({ surface }) => surface,
  (surface) => `${surface} balls`,
);

/** `count` copies of what `make` gives for 0, 1, ... */
export const times = <T>(count: number, make: (i: number) => T): T[] =>
  Array.from({ length: count }, (_, i) => make(i));
