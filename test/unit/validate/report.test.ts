import { describe, expect, it } from 'vitest';
import { drawPlot } from '../../validate/report/plot';
import { printTable } from '../../validate/report/table';
import type { ReportPlot, ReportRow } from '../../validate/types';

const row: ReportRow = {
  of: 'all',
  figure: 'within 1 u',
  value: 68.04,
  unit: '%',
  limit: { low: 65, high: 71 },
  passed: true,
  n: 2000,
  limits95: [65.9, 70.1],
};

describe('the table', () => {
  it('prints value, limit, n, binomial limits and verdict a row', () => {
    const failed: ReportRow = {
      of: 'radius 20 px',
      figure: 'RMS over bound',
      value: 1.404,
      unit: '',
      limit: { high: 1.3 },
      passed: false,
      n: 120,
      note: '3 noBall',
    };
    const text = printTable(
      [{ name: 'clean', report: { rows: [row, failed], plots: [], text: '' } }],
      'ball',
      4,
    );
    expect(text).toContain('seed 4');
    expect(text).toMatch(
      /clean +all +within 1 u +68\.0 % +65 to 71 % +2000 +65\.9 to 70\.1 % +pass/,
    );
    expect(text).toMatch(/radius 20 px +RMS over bound +1\.40 \(3 noBall\) +≤ 1\.3 +120 +FAIL/);
    expect(text).toContain('1 of 2 rows fail.');
  });
});

describe('plots', () => {
  const plot: ReportPlot = {
    file: 'ratio',
    title: 'Ratio & "bound"',
    x: { label: 'radius, px' },
    y: { label: 'RMS < bound', log: true },
    series: ['one', 'two'].map((name, k) => ({
      name,
      points: [
        { x: 12, y: 1 + k, u: 0.1 },
        { x: 40, y: 3 + k, u: 9 },
      ],
    })),
    limits: [1.3],
  };

  it('label axes and series, draw limits, and leave no number undefined', () => {
    const svg = drawPlot(plot);
    expect(svg).toContain('radius, px');
    expect(svg).toContain('RMS &lt; bound');
    expect(svg).toContain('Ratio &amp; &quot;bound&quot;');
    expect(svg.match(/class="limit"/g)).toHaveLength(1);
    expect(svg).toContain('>one<');
    expect(svg).toContain('>two<');
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('double every colour by a marker and a line of its own', () => {
    const [one, two] = drawPlot(plot)
      .split('\n')
      .filter((text) => text.startsWith('<g stroke='));
    const marker = (text: string | undefined) =>
      /transform="[^"]*" d="([^"]*)"/.exec(text ?? '')?.[1];
    const dash = (text: string | undefined) => /stroke-dasharray="([^"]*)"/.exec(text ?? '')?.[1];
    expect(marker(one)).not.toBe(marker(two));
    expect(dash(one)).not.toBe(dash(two));
  });

  it('are the same each time', () => {
    expect(drawPlot(plot)).toBe(drawPlot(plot));
  });
});
