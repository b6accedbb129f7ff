import { afterEach, describe, expect, it } from 'vitest';
import { parseQuantity } from '../../../src/core/quantityText';
import type { Reason } from '../../../src/core/reason';
import { languageFor } from '../../../src/text/language';
import { reasonWords } from '../../../src/text/reasonWords';
import { showFixed, showList, showPercent } from '../../../src/text/show';
import { language, speak, t } from '../../../src/text/text';

afterEach(() => speak('en'));

describe('the language', () => {
  it.each([
    [['de-CH', 'fr'], 'de'],
    [['pt-BR', 'es-419'], 'es'],
    [['ja'], 'en'],
    [[], 'en'],
  ])('for %j is %s', (preferred, found) => {
    expect(languageFor(preferred)).toBe(found);
  });

  it('is the last one asked for, whichever comes first', async () => {
    await Promise.all([speak('fr'), speak('de')]);
    expect(language.value).toBe('de');
    expect(t('shell.steps.scale')).toBe('Maßstab');
    expect(showFixed(1.5, 2)).toBe('1,50');
    expect(showPercent(0.955)).toBe('95,5\u00a0%');
    expect(showList(['a', 'b'])).toBe('a, b');
  });
});

describe('a reason', () => {
  const missing: Reason = { code: 'lengthUnstated', message: 'Length 2.', values: { number: 2 } };

  it('is said in the language, with its values', async () => {
    await speak('de');
    expect(reasonWords(missing).message).toContain('Länge 2 ist eingezeichnet');
    const typed = parseQuantity('-1.5', {
      name: 'length',
      kind: 'length',
      unit: 'mm',
      sign: 'positive',
    });
    expect(typed.ok ? '' : reasonWords(typed.reason).message).toContain('-1,5 mm');
  });

  it.each([
    ['of a code without words', { code: 'unheardOf', message: 'Said in English.' }],
    ['without the values the words need', { code: 'lengthUnstated', message: 'Said in English.' }],
  ])('%s is said as the core says it', async (_, reason: Reason) => {
    await speak('es');
    expect(reasonWords(reason).message).toBe('Said in English.');
  });

  it('says the reason behind it in its words, lends its remedy, and names what it is about', async () => {
    await speak('fr');
    const because = { code: 'shotNotSaved', message: '', values: { because: 'noMuzzle' } };
    const { message, remedy } = reasonWords(because);
    expect(message).toContain('Le plan de bouche n’est pas encore marqué.');
    expect(remedy).toMatch(/^Marquez/);
    const named = { code: 'notShot', message: '', values: { about: 'a.json', format: 'x' } };
    expect(reasonWords(named).message).toMatch(/^a\.json\s: Ce n’est pas/);
  });

  it('says a source of uncertainty by its name in the language', async () => {
    await speak('de');
    const values = { source: 'wall friction' };
    expect(reasonWords({ code: 'fitAtBound', message: '', values }).remedy).toContain(
      'Wandreibung',
    );
  });

  it('is said in English where the reason behind it has no words', async () => {
    await speak('de');
    const values = { because: 'unheardOf' };
    const reason = { code: 'shotNotSaved', message: 'Said in English.', values };
    expect(reasonWords(reason).message).toBe('Said in English.');
  });

  it('stays as it is in English', () => {
    expect(reasonWords(missing)).toBe(missing);
  });
});
