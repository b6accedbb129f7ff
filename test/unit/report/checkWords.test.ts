import { afterAll, describe, expect, it } from 'vitest';
import { determineExit } from '../../../src/exit/determineExit';
import { chiSquareCheck, runsCheck, serialCorrelationCheck } from '../../../src/fit/residualChecks';
import { checkWords } from '../../../src/report/fit';
import type { FitCheck } from '../../../src/shot/result';
import { speak } from '../../../src/text/text';
import { HIGH_SPEED, simulate } from '../exit/shots';

const wave = Array.from({ length: 40 }, (_, i) => Math.sin(i / 4));
const alternating = Array.from({ length: 40 }, (_, i) => (i % 2 === 0 ? 1 : -1) * (1 + i / 100));
const mixed = [1, -1, -1, 1, 1, -1, 1, -1, 1, 1, -1, -1, 1, -1, 1, -1, -1, 1, 1, -1];

function fittedChecks(): readonly FitCheck[] {
  const { points, shared } = simulate(HIGH_SPEED, 3);
  const outcome = determineExit(points, shared, {
    ...{ model: 'auto', robust: true, coverage: 0.95, seed: 1 },
  });
  if (!outcome.ok) throw new Error(outcome.reason.message);
  return outcome.value.fit.checks;
}

/** Every sentence of the checks of the residuals, and those of a whole fit. */
const CHECKS: readonly FitCheck[] = [
  ...[chiSquareCheck(0, 0), chiSquareCheck(90, 38), chiSquareCheck(8, 38), chiSquareCheck(38, 38)],
  ...[runsCheck([1]), runsCheck(wave), runsCheck(alternating), runsCheck(mixed)],
  ...[serialCorrelationCheck([1]), serialCorrelationCheck(wave), serialCorrelationCheck(mixed)],
  ...fittedChecks(),
];

afterAll(() => speak('en'));

describe.each(['de', 'es', 'fr'] as const)('checks of a fit in %s', (language) => {
  it('are said in its words with their values, a remedy where there is one', async () => {
    await speak(language);
    expect(new Set(CHECKS.map(({ code }) => code)).size).toBeGreaterThan(8);
    for (const check of CHECKS) {
      const { message, remedy } = checkWords(check);
      expect(message, check.code).not.toBe(check.message);
      expect(message, check.code).not.toMatch(/[{}]|undefined/);
      expect(remedy === null, check.code).toBe(check.passed || check.remedy === null);
      if (remedy !== null) expect(remedy).not.toBe(check.remedy);
    }
  });

  it('say the sentences of one code apart', async () => {
    await speak(language);
    for (const code of ['chiSquare', 'runs', 'serialCorrelation']) {
      const some = CHECKS.filter((check) => check.code === code);
      const english = new Set(some.map(({ message }) => message));
      expect(new Set(some.map((check) => checkWords(check).message)).size).toBe(english.size);
    }
  });

  it('are in English where a file holds no values', async () => {
    await speak(language);
    const [{ values: _, ...bare }] = [chiSquareCheck(90, 38)];
    expect(checkWords(bare).message).toBe(bare.message);
  });
});
