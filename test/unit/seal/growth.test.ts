import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/core/random';
import { intervalOf, momentsOf } from '../../../src/seal/density';
import { type HeightSeen, onsetDensity } from '../../../src/seal/growth';

/** A film that leaves at `onset` and grows with a power of the time since; seen from 0.4 px on. */
function film(onset: number, power: number, scale: number, noise: () => number): HeightSeen[] {
  return Array.from({ length: 22 }, (_, time) => {
    const true_ = scale * Math.max(0, time - onset) ** power;
    const height = true_ + 0.08 * noise();
    return height > 0.4
      ? { time, height, u: 0.08, seen: true }
      : { time, height: 0.1, u: 0.08, seen: false };
  });
}

describe('onsetDensity', () => {
  it('holds the onset of films of all powers as often as it says', () => {
    const random = seededRandom(77);
    let held = 0;
    const shots = 200;
    for (let i = 0; i < shots; i++) {
      const onset = 10 + random.uniform();
      const scale = 0.3 + 2 * random.uniform();
      const density = onsetDensity(
        film(onset, 1 + 2 * random.uniform(), scale, () => random.normal()),
      );
      if (density === null) throw new Error('no density');
      const [low, high] = intervalOf(density, 0.95);
      if (low <= onset && onset <= high) held++;
    }
    // The law has no room for the edge of what is seen: a little fewer than it says.
    expect(held / shots).toBeGreaterThan(0.88);
  });

  it('is sharper where the film is seen from lower on', () => {
    const heights = film(10.3, 2, 1, () => 0);
    const late = heights.map((h) => (h.height < 6 ? { ...h, height: 6, seen: false } : h));
    const spread = (seen: HeightSeen[]) => momentsOf(onsetDensity(seen) ?? failed()).sd;
    expect(spread(heights)).toBeLessThan(0.7 * spread(late));
  });

  it('says nothing of a film that never leaves, or has left before the first frame', () => {
    const rest = film(99, 2, 1, () => 0);
    expect(onsetDensity(rest)).toBeNull();
    expect(onsetDensity(film(10, 2, 1, () => 0).slice(13))).toBeNull();
    expect(onsetDensity([])).toBeNull();
  });
});

function failed(): never {
  throw new Error('no density');
}
