import { describe, expect, it } from 'vitest';
import { STEPS } from '../../../src/app/draft';
import { ownNumbers } from '../../../src/app/ownNumbers';
import { formulasFor } from '../../../src/ui/explain/formulas';
import { letterText } from '../../../src/ui/explain/symbols';
import { inLine, symbolsIn } from '../../../src/ui/explain/term';

const NONE = ownNumbers({ draft: null, frameCount: null, clock: null, scale: null, result: null });

describe('formulas', () => {
  it('are there for every step, and said in one line as they are meant', () => {
    const lines = STEPS.flatMap((step) =>
      formulasFor(step, NONE).map(
        ({ left, right }) => `${letterText(left)} = ${inLine(right, letterText)}`,
      ),
    );
    expect(lines).toEqual([
      'T = (N − 1) × Δt',
      'Δt = 1 / f',
      'k = L / p × D / (D + z)',
      's = k × d',
      'b = (v × tₓ) / k',
      'q = tₑ − tₛ',
      'vₘ = (s₂ − s₁) / (t₂ − t₁)',
      'v₀ = √((2 × p × A × L) / m)',
    ]);
  });

  it('leave the camera’s distance out where none is stated', () => {
    const flat = formulasFor('scale', { ...NONE, oneScale: { value: 3e-4, u: 1e-7 } });
    expect(flat.map(({ right }) => symbolsIn(right))).toEqual([['length', 'lengthPixels']]);
  });
});
