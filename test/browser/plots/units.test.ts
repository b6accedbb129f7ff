import { describe, expect, it } from 'vitest';
import { bandBounds, domainOf, padded } from '../../../src/plots/domain';
import { headroomFor, placeLabels } from '../../../src/plots/Instants';
import type { PlotInstant } from '../../../src/plots/props';
import { plusMinus } from '../../../src/plots/text';
import { wholeTicks } from '../../../src/plots/ticks';
import { lengthUnit, timeUnit } from '../../../src/plots/units';

describe('units', () => {
  it('keep axis numbers between about one and a thousand', () => {
    expect([2, 0.016, 4e-5].map((span) => timeUnit(span).symbol)).toEqual(['s', 'ms', 'µs']);
    expect([12, 0.25, 8e-5].map((span) => lengthUnit(span).symbol)).toEqual(['m', 'mm', 'µm']);
    for (const span of [3e-5, 4e-3, 0.7, 30]) {
      const shown = span * timeUnit(span).perSi;
      expect(shown).toBeGreaterThanOrEqual(1);
      expect(shown).toBeLessThan(1000);
    }
  });

  it('state a value by its uncertainty (JCGM 100:2008, 7.2.6)', () => {
    expect(plusMinus(0.0345678, 2.5e-5, lengthUnit(0.2))).toBe('34.568 ± 0.025');
  });
});

describe('domains', () => {
  it('leave out what is no number and always have a span', () => {
    expect(domainOf([3, Number.NaN, -1, Infinity])).toEqual([-1, 3]);
    expect(domainOf([], [0, 5])).toEqual([0, 5]);
    const [low, high] = padded([7, 7], 0.05);
    expect(high).toBeGreaterThan(low);
  });

  it('hold the whole band', () => {
    const curve = { values: [10, 20], u: [1, 2], coverageFactor: 2 };
    expect(domainOf(bandBounds(curve))).toEqual([8, 24]);
  });
});

describe('wholeTicks', () => {
  it('are whole, inside, and about as many as asked', () => {
    expect(wholeTicks(0, 239, 6)).toEqual([0, 50, 100, 150, 200]);
    expect(wholeTicks(98.6, 101.2, 8)).toEqual([99, 100, 101]);
  });
});

describe('placeLabels', () => {
  const instant = (kind: PlotInstant['kind'], time: number, label: string): PlotInstant => ({
    kind,
    time,
    low: time,
    high: time,
    label,
  });
  const seconds = { symbol: 's', perSi: 1 };
  const place = (instants: PlotInstant[]) => placeLabels(instants, seconds, [0, 10], 670);

  it('puts labels with room in the lowest row', () => {
    const placed = place([instant('burst', 1, 'seal opens'), instant('exit', 6, 'leaves')]);
    expect(placed.map(({ row }) => row)).toEqual([0, 0]);
    expect(headroomFor(placed)).toBe(19);
  });

  it('lifts the earlier of two close ones, so that the later one’s line does not cross it', () => {
    const placed = place([instant('burst', 4, 'seal opens'), instant('exit', 4.2, 'leaves')]);
    const rows = new Map(placed.map(({ instant: { kind }, row }) => [kind, row]));
    expect(rows.get('exit')).toBe(0);
    expect(rows.get('burst')).toBe(1);
  });

  it('turns labels at the right edge inwards, the later above', () => {
    const placed = place([
      instant('contact', 9.6, 'reaches the seal'),
      instant('exit', 9.9, 'leaves'),
    ]);
    expect(placed.map(({ anchor }) => anchor)).toEqual(['end', 'end']);
    const rows = new Map(placed.map(({ instant: { kind }, row }) => [kind, row]));
    expect(rows.get('contact')).toBe(0);
    expect(rows.get('exit')).toBe(1);
  });

  it('lets no line run through a label, however close the instants stand to the edge', () => {
    const names = ['onset', 'burst', 'contact', 'exit'] as const;
    for (let start = 0; start < 10; start += 0.13) {
      for (const gap of [0.02, 0.1, 0.4, 1.1]) {
        const placed = place(
          names.map((kind, i) => instant(kind, Math.min(start + i * gap, 9.95 + i / 100), kind)),
        );
        const spans = placed.map(({ instant: { time, label }, anchor, row }) => {
          const at = 58 + time * 60;
          const reach = label.length * 6.6;
          return anchor === 'start'
            ? { at, row, from: at + 1, to: at + reach }
            : { at, row, from: at - reach, to: at - 1 };
        });
        for (const text of spans) {
          const meets = spans.filter(
            (other) =>
              other !== text &&
              // The other's line runs from its own row down to the field.
              ((other.row >= text.row && other.at > text.from && other.at < text.to) ||
                (other.row === text.row && other.from < text.to && other.to > text.from)),
          );
          expect(meets).toEqual([]);
        }
      }
    }
  });
});
