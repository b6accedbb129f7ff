import { describe, expect, it } from 'vitest';
import { setupKey } from '../../../src/shot/setup';
import { inputs } from '../reduction/scriptedFilm';

const shot = (change: Record<string, unknown>) => inputs(change).shot;

describe('setupKey', () => {
  it('is shared by shots of one setup with the same marks, whatever else they state', () => {
    const first = setupKey(shot({ setupId: 'bench' }));
    expect(first).not.toBeNull();
    expect(setupKey(shot({ setupId: 'bench', notes: 'second', coverage: 0.9 }))).toBe(first);
  });

  it('parts shots of another setup, with marks set anew, or of none', () => {
    const first = setupKey(shot({ setupId: 'bench' }));
    const muzzle = { point: [101, 30], u: 0.5, axis: null };
    expect(setupKey(shot({ setupId: 'window' }))).not.toBe(first);
    expect(setupKey(shot({ setupId: 'bench', muzzle }))).not.toBe(first);
    expect(setupKey(shot({}))).toBeNull();
  });
});
