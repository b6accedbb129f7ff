import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../../src/core/estimate';
import { mainTable } from '../../../src/report/mainTable';
import { moments, quotable, velocityDetail } from '../../../src/report/statement';
import type { Result } from '../../../src/shot/result';
import { exampleReduction } from '../../fixtures/reduction';
import { exampleShot } from '../../fixtures/shot';

const example = exampleReduction({ shot: exampleShot(), footageSha256: null }).result;
const quantity = (value: number, u: number, half: number, dof: number | null = 9): Quantity => ({
  value,
  u,
  interval: [value - half, value + half],
  coverage: 0.95,
  dof,
});
const said = (change: Partial<Result>, unit = 'm/s') =>
  quotable({ ...example, warnings: [], ...change }, unit).map((text) =>
    text.replaceAll('\u00a0', ' '),
  );

describe('the statement to quote', () => {
  it('states value, standard uncertainty and interval to the same place', () => {
    // The mass of JCGM 100:2008, 7.2.2 and 7.2.4, in m/s: 100.021 47 with u 0.000 35, 9 degrees of freedom, U 0.000 79.
    expect(said({ exitVelocity: quantity(100.02147, 0.00035, 0.00079) })[0]).toBe(
      "The ball's centre left the muzzle at 100.02147 m/s, with a standard uncertainty of 0.00035 m/s; the interval from 100.02068 m/s to 100.02226 m/s holds the true speed with a probability of 95 % (9 effective degrees of freedom).",
    );
    // JCGM 100:2008, 7.2.6: 10.057 62 with u 0.027 is rounded to 10.058.
    expect(said({ exitVelocity: quantity(10.05762, 0.027, 0.06) })[0]).toContain(
      'at 10.058 m/s, with a standard uncertainty of 0.027 m/s',
    );
    // An uncertainty that rounds to the next power of ten keeps two figures.
    expect(said({ exitVelocity: quantity(40.12345, 0.0996, 0.2, null) })[0]).toBe(
      "The ball's centre left the muzzle at 40.12 m/s, with a standard uncertainty of 0.10 m/s; the interval from 39.92 m/s to 40.32 m/s holds the true speed with a probability of 95 %.",
    );
  });

  it('converts to the unit asked for', () => {
    // 40.123 m/s are 144.44 km/h; 0.052 m/s are 0.19 km/h.
    const text = said({ exitVelocity: quantity(40.123, 0.052, 0.104) }, 'km/h')[0];
    expect(text).toContain('144.44 km/h, with a standard uncertainty of 0.19 km/h');
    expect(text).toContain('from 144.07 km/h to 144.82 km/h');
  });

  it('says in words which came first, and when that cannot be told', () => {
    expect(said({ lead: quantity(1.3e-4, 2.4e-5, 4.8e-5) })[1]).toBe(
      "The muzzle seal opened 130 µs before the ball's centre left, with a standard uncertainty of 24 µs (95 % interval 82 µs to 178 µs).",
    );
    expect(said({ lead: quantity(-1.3e-4, 2.4e-5, 4.8e-5) })[1]).toBe(
      "The muzzle seal opened 130 µs after the ball's centre left, with a standard uncertainty of 24 µs (95 % interval 82 µs to 178 µs).",
    );
    expect(said({ lead: quantity(1e-5, 2.4e-5, 4.8e-5) })[1]).toContain(
      'within its 95 % interval it may have opened before or after',
    );
    expect(said({ lead: quantity(0.0054, 0.001, 0.002) })[1]).toContain('5.4 ms before');
  });

  it('gives the reason where there is no number, and says that warnings belong to it', () => {
    const none = { unavailable: { code: 'noBall', message: 'No ball was found.' } };
    expect(said({ exitVelocity: none, lead: none })).toEqual([
      'No exit velocity can be stated: No ball was found.',
      'How long before the ball the seal opened cannot be stated: No ball was found.',
    ]);
    const warning = { code: 'w', message: 'Look.', remedy: 'Do.' };
    expect(said({ warnings: [warning] }).at(-1)).toContain('carries a warning');
    expect(said({ warnings: [warning, warning] }).at(-1)).toContain('carries 2 warnings');
    expect(said({})[2]).toBe(
      "Found from the ball's centre in 10 frames of high-speed film; uncertainties after JCGM 100, checked by Monte Carlo (JCGM 101).",
    );
  });

  it('claims no check that failed', () => {
    const { monteCarlo } = example;
    if (!('trials' in monteCarlo)) throw new Error('the example has one');
    const failed = { ...monteCarlo, agrees: false };
    expect(said({ monteCarlo: failed })[2]).toMatch(/after JCGM 100\.$/);
  });
});

describe('numbers beside it', () => {
  it('are those of the step', () => {
    expect(velocityDetail(quantity(40.123, 0.052, 0.104, 12.4), 'm/s')).toBe(
      "Speed of the ball's centre along the flight as it crosses the muzzle plane; interval 40.019 to 40.227 m/s, standard uncertainty 0.052 m/s, 12 effective degrees of freedom.",
    );
    expect(moments(example).map(({ text }) => text.replaceAll('\u00a0', ' '))).toEqual([
      '0.120 ± 0.048 ms (95 %)',
      '0.2500 ± 0.0040 ms (95 %)',
      '20 ± 48 µs before the seal opened',
    ]);
  });

  it('stand in one table, missing ones with their reason', () => {
    const none = { unavailable: { code: 'noBall', message: 'No ball was found.' } };
    const { columns, rows } = mainTable({ ...example, contactLead: none }, 'm/s');
    expect(columns[3]?.title.replace('\u00a0', ' ')).toBe('95 % interval');
    expect(rows[0]).toEqual([
      'Exit velocity',
      '40.123 m/s',
      '0.052 m/s',
      '40.019 to 40.227 m/s',
      '12.0',
    ]);
    expect(rows[1]?.slice(0, 4)).toEqual([
      'Lead: exit minus burst',
      '130 µs',
      '24 µs',
      '82 to 178 µs',
    ]);
    expect(rows[4]?.[1]).toBe('none: No ball was found.');
  });
});
