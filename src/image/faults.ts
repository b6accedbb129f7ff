import type { ImagePoint } from '../core/units';
import type { Background } from './types';

/** Grey values of the scene, those of faulty pixels replaced by the mean of the sound ones around them. */
export function soundLevels({ width, height, level, faulty }: Background): Float32Array {
  if (faulty === undefined) return level;
  const sound = level.slice();
  for (let p = 0; p < level.length; p++) {
    if (faulty[p] !== 1) continue;
    const x = p % width;
    const y = (p - x) / width;
    let sum = 0;
    let n = 0;
    for (let j = Math.max(0, y - 2); j <= Math.min(height - 1, y + 2); j++) {
      for (let i = Math.max(0, x - 2); i <= Math.min(width - 1, x + 2); i++) {
        if (faulty[j * width + i] === 1) continue;
        sum += level[j * width + i] as number;
        n++;
      }
    }
    if (n > 0) sound[p] = sum / n;
  }
  return sound;
}

/** Where the faulty pixels are. */
export function faultyPlaces({ width, faulty }: Background): ImagePoint[] {
  const places: ImagePoint[] = [];
  faulty?.forEach((one, p) => {
    if (one === 1) places.push([p % width, Math.floor(p / width)]);
  });
  return places;
}

/** Whether one of the 3 x 3 pixels around an inner pixel is faulty. */
export function besideFault({ width, faulty }: Background, p: number): boolean {
  if (faulty === undefined) return false;
  for (let q = p - width - 1; q <= p + width - 1; q += width) {
    if (faulty[q] === 1 || faulty[q + 1] === 1 || faulty[q + 2] === 1) return true;
  }
  return false;
}
