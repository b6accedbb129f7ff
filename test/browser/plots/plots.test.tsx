import axe from 'axe-core';
import { type ComponentChildren, render } from 'preact';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { BudgetChart } from '../../../src/plots/BudgetChart';
import { PositionPlot } from '../../../src/plots/PositionPlot';
import type {
  BandCurve,
  LabelledEvent,
  PlotInstant,
  ResidualPoint,
} from '../../../src/plots/props';
import { ResidualPlot } from '../../../src/plots/ResidualPlot';
import { SealPlot } from '../../../src/plots/SealPlot';
import { Timeline } from '../../../src/plots/Timeline';
import { VelocityPlot } from '../../../src/plots/VelocityPlot';
import type { BudgetEntry, Position } from '../../../src/shot/result';
import '../../../src/ui/base.css';
import '../../../src/ui/tokens.css';

const host = document.createElement('div');

/** Ten centres at 1000 frames/s and 20 m/s, frame 4 refused, frame 6 by hand, frame 9 not found. */
const positions: readonly Position[] = Array.from({ length: 10 }, (_, frame) => ({
  frame,
  time: frame / 1000,
  x: frame === 9 ? null : 10 * frame,
  y: frame === 9 ? null : 5,
  ux: 0.1,
  uy: 0.1,
  cov: 0,
  s: frame === 9 ? null : 0.02 * frame,
  us: frame === 9 ? null : 0.01,
  visible: 1,
  shift: [0, 0],
  used: frame !== 4 && frame !== 9,
  manual: frame === 6,
  why: null,
}));
const curve: BandCurve = {
  times: [0, 0.004, 0.008],
  values: [0, 0.08, 0.16],
  u: [0.005, 0.005, 0.01],
  coverageFactor: 2,
  coverage: 0.95,
};
const exit: PlotInstant = { kind: 'exit', time: 0.002, low: 0.0015, high: 0.0025, label: 'leaves' };

function show(plot: ComponentChildren) {
  render(plot, host);
}

const path = (name: string, index = 0) => host.querySelectorAll(`.plot-chart .${name}`)[index];
const d = (name: string, index = 0) => path(name, index)?.getAttribute('d') ?? '';
const numbers = (text: string) => (text.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);

/**
 * Reads an axis back from its drawn ticks: the place of a value in CSS px. Two ticks fix a linear scale, so
 * the check is against what a reader of the plot sees, not against the code's own scale.
 */
function readAxis(axis: 'x' | 'y', chart = 0) {
  const ticks = host
    .querySelectorAll('.plot-chart')
    [chart]?.querySelectorAll(`.plot-axis-${axis} g`);
  const read = [...(ticks ?? [])].flatMap((tick) => {
    const text = tick.querySelector('text')?.textContent?.replace('−', '-').replace(',', '');
    const place = numbers(tick.getAttribute('transform') ?? '')[axis === 'x' ? 0 : 1];
    return text === undefined || place === undefined ? [] : [{ value: Number(text), place }];
  });
  const first = read[0];
  const last = read.at(-1);
  if (first === undefined || last === undefined || first === last) throw new Error('no ticks');
  const slope = (last.place - first.place) / (last.value - first.value);
  return (value: number) => first.place + (value - first.value) * slope;
}

beforeEach(async () => {
  await page.viewport(900, 800);
  host.style.width = '640px';
  document.body.append(host);
});
afterEach(() => {
  render(null, host);
  host.remove();
});

const ready = () => expect.poll(() => host.querySelector('.plot-chart')).not.toBeNull();

describe('PositionPlot', () => {
  const plot = (given: Partial<Parameters<typeof PositionPlot>[0]> = {}) => (
    <PositionPlot
      positions={positions}
      curve={curve}
      instants={[exit]}
      zone={{ from: 0, to: 0.05 }}
      {...given}
    />
  );

  it('puts centres, curve and band where the axes say', async () => {
    show(plot());
    await ready();
    const x = readAxis('x');
    const y = readAxis('y');
    const marks = d('plot-used').split('M').filter(Boolean);
    // Frames 0-3, 5, 7, 8: the middle of a dot is 3 px right of where its path begins.
    expect(marks).toHaveLength(7);
    const [left = 0, top = 0] = numbers(marks[3] ?? '');
    expect(left + 3).toBeCloseTo(x(3), 1);
    expect(top).toBeCloseTo(y(60), 1);
    const middle = numbers(d('plot-curve'));
    const expected = [x(0), y(0), x(4), y(80), x(8), y(160)];
    expect(middle).toHaveLength(expected.length);
    expected.forEach((place, i) => {
      expect(middle[i]).toBeCloseTo(place, 1);
    });
    // Upper side of the band: value + 2 u, in millimetres.
    const band = numbers(d('plot-band'));
    [x(0), y(10), x(4), y(90), x(8), y(180)].forEach((place, i) => {
      expect(band[i]).toBeCloseTo(place, 1);
    });
  });

  it('tells used, refused and hand-placed centres apart by shape, and draws error bars of u', async () => {
    show(plot());
    await ready();
    const y = readAxis('y');
    expect(d('plot-refused').match(/M/g)).toHaveLength(1);
    expect(d('plot-manual').match(/M/g)).toHaveLength(1);
    const [, high = 0, low = 0] = numbers(d('plot-bars'));
    expect(low - high).toBeCloseTo(y(-10) - y(10), 1);
    await expect.element(page.getByText('fit with 95 % band')).toBeVisible();
  });

  it('marks the exit with its interval and the muzzle zone', async () => {
    show(plot());
    await ready();
    const x = readAxis('x');
    const y = readAxis('y');
    const interval = path('plot-instant-exit rect');
    expect(Number(interval?.getAttribute('x'))).toBeCloseTo(x(1.5), 1);
    expect(Number(interval?.getAttribute('width'))).toBeCloseTo(x(2.5) - x(1.5), 1);
    expect(numbers(d('plot-instant-exit path'))[0]).toBeCloseTo(x(2), 1);
    const zone = path('plot-zone');
    expect(Number(zone?.getAttribute('y'))).toBeCloseTo(y(50), 1);
    expect(Number(zone?.getAttribute('height'))).toBeCloseTo(y(0) - y(50), 1);
  });

  it('reads out the centre under the pointer and picks its frame', async () => {
    const onPickFrame = vi.fn();
    show(plot({ onPickFrame }));
    await ready();
    const chart = host.querySelector('.plot-chart');
    if (chart === null) throw new Error('no chart');
    const position = { x: readAxis('x')(5), y: readAxis('y')(100) };
    await userEvent.click(chart, { position });
    expect(onPickFrame.mock.calls).toEqual([[5]]);
    await expect.element(page.getByText('frame 5: 5 ms, 100 ± 10 mm')).toBeVisible();
  });

  it('has the same numbers in a table', async () => {
    show(plot());
    const cells = [...host.querySelectorAll('tbody tr')].map((row) =>
      [...row.querySelectorAll('td')].map((cell) => cell.textContent),
    );
    expect(cells).toHaveLength(9);
    expect(cells[4]).toEqual(['4', '4', '80 ± 10', 'not used']);
    expect(cells[6]).toEqual(['6', '6', '120 ± 10', 'used, placed by hand']);
  });

  it('follows its container and draws the same twice', async () => {
    show(plot());
    await ready();
    const first = host.innerHTML;
    render(null, host);
    show(plot());
    await ready();
    const ids = (html: string) => html.replace(/P\d+-\d+/g, 'id');
    expect(ids(host.innerHTML)).toBe(ids(first));
    host.style.width = '390px';
    await expect.poll(() => host.querySelector('.plot-chart')?.getAttribute('width')).toBe('390');
  });

  it('stands without curve, exit or a single centre', async () => {
    show(<PositionPlot positions={[]} curve={null} instants={[]} zone={null} />);
    await ready();
    expect(host.innerHTML).not.toContain('NaN');
  });
});

describe('ResidualPlot', () => {
  const points: readonly ResidualPoint[] = [3, -1, 0.5, 40].map((times, frame) => ({
    frame,
    time: frame / 1000,
    residual: times * 2e-5,
    u: 2e-5,
    used: frame !== 3,
    manual: false,
  }));

  it('shows each residual as a length and over its uncertainty, with lines at two', async () => {
    show(<ResidualPlot points={points} />);
    await ready();
    const lengths = readAxis('y');
    const ratios = readAxis('y', 1);
    expect(numbers(d('plot-used'))[1]).toBeCloseTo(lengths(60), 1);
    expect(numbers(d('plot-used', 1))[1]).toBeCloseTo(ratios(3), 1);
    expect([0, 1].map((i) => numbers(d('plot-limit', i))[1])).toEqual([
      expect.closeTo(ratios(-2), 1),
      expect.closeTo(ratios(2), 1),
    ]);
  });

  it('has a band of twice the uncertainty of each used one around zero', async () => {
    show(<ResidualPlot points={points} />);
    await ready();
    const y = readAxis('y');
    const band = numbers(d('plot-own-band'));
    // Three used ones, there and back: six places.
    expect(band).toHaveLength(12);
    expect(band[1]).toBeCloseTo(y(40), 1);
    expect(band.at(-1)).toBeCloseTo(y(-40), 1);
  });

  it('shows a refused one far off as an arrowhead at the edge instead of shrinking the rest', async () => {
    show(<ResidualPlot points={points} />);
    await ready();
    expect(d('plot-refused')).toBe('');
    const top = Number(/^M[\d.]+ ([\d.]+)V/.exec(d('plot-frame'))?.[1]);
    expect(numbers(d('plot-beyond'))[1]).toBe(top + 1);
  });
});

const EVENTS: readonly LabelledEvent[] = [
  { kind: 'puncture', label: 'rear seal opens', time: -0.0123, low: -0.0124, high: -0.0122 },
  { kind: 'onset', label: 'bulge begins', time: -0.0009, low: -0.00105, high: -0.00075 },
  { kind: 'burst', label: 'seal opens', time: -0.000295, low: -0.000346, high: -0.000244 },
  { kind: 'contact', label: 'ball reaches seal', time: -0.000085, low: -0.000088, high: -0.000082 },
  { kind: 'exit', label: 'ball centre leaves', time: 0, low: -2e-6, high: 2e-6 },
  { kind: 'burstHeard', label: 'burst heard', time: 0.00002, low: -0.00008, high: 0.00012 },
  { kind: 'target', label: 'ball at the target', time: 0.0084, low: 0.00838, high: 0.00842 },
  { kind: 'impactHeard', label: 'impact heard', time: 0.0291, low: 0.029, high: 0.0292 },
];

describe('Timeline', () => {
  const overlapping = () => {
    const boxes = [...host.querySelectorAll('.plot-event-label')].map((label) =>
      label.getBoundingClientRect(),
    );
    return boxes.flatMap((a, i) =>
      boxes
        .slice(i + 1)
        .filter(
          (b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom,
        ),
    );
  };

  it.each([390, 1240])('keeps labels apart and within the strip, %i px wide', async (width) => {
    host.style.width = `${width}px`;
    await page.viewport(width + 20, 800);
    show(<Timeline events={EVENTS} from="exit" coverage={0.95} />);
    await ready();
    await expect.poll(() => path('plot-frame')?.getAttribute('d')).toContain(`H${width}`);
    const labels = [...host.querySelectorAll('.plot-event-label')];
    expect(labels).toHaveLength(8);
    expect(overlapping()).toEqual([]);
    const frame = host.getBoundingClientRect();
    for (const label of labels) {
      const box = label.getBoundingClientRect();
      expect(box.left).toBeGreaterThanOrEqual(frame.left);
      expect(box.right).toBeLessThanOrEqual(frame.right + 1);
    }
    const numbersOfTicks = [...host.querySelectorAll('.plot-axis-x text')].map((one) =>
      one.getBoundingClientRect(),
    );
    numbersOfTicks.slice(1).forEach((box, i) => {
      expect(box.left).toBeGreaterThan(numbersOfTicks[i]?.right ?? 0);
    });
    await expect.element(page.getByText('drawn closer the farther from it')).toBeVisible();
  });

  it('draws times and intervals where its ticks say, each kind with a shape of its own', async () => {
    show(<Timeline events={EVENTS.slice(1, 5)} from="exit" coverage={0.95} />);
    await ready();
    const x = readAxis('x');
    const burst = path('plot-instant-burst rect');
    expect(Number(burst?.getAttribute('x'))).toBeCloseTo(x(-0.346), 0);
    expect(Number(burst?.getAttribute('width'))).toBeCloseTo(x(-0.244) - x(-0.346), 0);
    const shapes = [...host.querySelectorAll('.plot-event-mark')].map((mark) =>
      mark.getAttribute('d'),
    );
    expect(new Set(shapes).size).toBe(4);
  });

  it('has the events in order in a table', () => {
    show(<Timeline events={EVENTS.slice(1, 5)} from="exit" coverage={0.95} />);
    const rows = [...host.querySelectorAll('tbody tr')].map((row) =>
      [...row.querySelectorAll('td')].map((cell) => cell.textContent),
    );
    expect(rows[1]).toEqual(['seal opens', '−295 ± 51 µs', '-0.346 to -0.244']);
    expect(rows.map(([name]) => name)).toEqual([
      'bulge begins',
      'seal opens',
      'ball reaches seal',
      'ball centre leaves',
    ]);
  });
});

const MS = { symbol: 'm/s', perSi: 1 };

describe('VelocityPlot', () => {
  it('shows speeds in the unit asked for', async () => {
    const speeds: BandCurve = { ...curve, values: [10, 10, 10], u: [0.1, 0.1, 0.1] };
    show(
      <VelocityPlot
        unit={{ symbol: 'km/h', perSi: 3.6 }}
        curve={speeds}
        differences={[{ time: 0.003, v: 10.5, u: 0.4 }]}
        exit={{ time: 0.001, value: 10, interval: [9.5, 10.5] }}
      />,
    );
    await ready();
    const y = readAxis('y');
    expect(numbers(d('plot-used'))[1]).toBeCloseTo(y(10.5 * 3.6), 1);
    expect(numbers(d('plot-exit path'))[1]).toBeCloseTo(y(9.5 * 3.6), 1);
    await expect.element(page.getByText('speed along the flight axis, km/h')).toBeVisible();
    await expect.element(page.getByRole('cell', { name: '36', exact: true })).toBeInTheDocument();
  });

  it('puts curve, differences and the exit where the axes say', async () => {
    const speeds: BandCurve = { ...curve, values: [30, 29, 28], u: [0.2, 0.1, 0.2] };
    show(
      <VelocityPlot
        unit={MS}
        curve={speeds}
        differences={[{ time: 0.003, v: 29.5, u: 0.4 }]}
        exit={{ time: 0.001, value: 29.75, interval: [29.4, 30.1] }}
      />,
    );
    await ready();
    const x = readAxis('x');
    const y = readAxis('y');
    const line = numbers(d('plot-curve'));
    expect(line[4]).toBeCloseTo(x(8), 1);
    expect(line[5]).toBeCloseTo(y(28), 1);
    expect(numbers(d('plot-used'))[1]).toBeCloseTo(y(29.5), 1);
    const [left, low, high] = numbers(d('plot-exit path'));
    expect([left, low, high]).toEqual([
      expect.closeTo(x(1), 1),
      expect.closeTo(y(29.4), 1),
      expect.closeTo(y(30.1), 1),
    ]);
  });
});

describe('SealPlot', () => {
  it('puts the front of the film and every instant where the axes say', async () => {
    const burst: PlotInstant = { ...exit, kind: 'burst', label: 'seal opens' };
    const later: PlotInstant = { ...exit, time: 0.006, low: 0.0058, high: 0.0062 };
    show(
      <SealPlot
        times={Float64Array.of(0, 0.001, 0.002)}
        front={Float64Array.of(0, 0.001, 0.004)}
        frontU={Float64Array.of(1e-4, 1e-4, 1e-4)}
        instants={[burst, later]}
        posterior={{ times: [0.001, 0.002, 0.003], density: [0, 1000, 0] }}
        bounds={null}
      />,
    );
    await ready();
    const marks = d('plot-used').split('M').filter(Boolean);
    const [left = 0, top = 0] = numbers(marks[2] ?? '');
    expect(left + 3).toBeCloseTo(readAxis('x')(2), 1);
    expect(top).toBeCloseTo(readAxis('y')(4), 1);
    expect(numbers(d('plot-instant-burst path'))[0]).toBeCloseTo(readAxis('x')(2), 1);
    expect(numbers(d('plot-instant-exit path'))[0]).toBeCloseTo(readAxis('x')(6), 1);
  });
});

describe('the opening of the seal', () => {
  const plot = (given: Partial<Parameters<typeof SealPlot>[0]>) => (
    <SealPlot
      times={Float64Array.of(0, 0.001, 0.002, 0.003)}
      front={Float64Array.of(0, 0.001, 0.004, 0.004)}
      frontU={Float64Array.of(1e-4, 1e-4, 1e-4, 1e-4)}
      instants={[]}
      posterior={null}
      bounds={null}
      {...given}
    />
  );

  it('is a density that stands on the time axis, and once more enlarged', async () => {
    const burst: PlotInstant = { ...exit, kind: 'burst', low: 0.0018, high: 0.0023 };
    show(
      plot({
        instants: [burst],
        posterior: { times: [0.0018, 0.002, 0.0024], density: [0, 5000, 0] },
      }),
    );
    await ready();
    const foot = Number(/V([\d.]+)H/.exec(d('plot-frame'))?.[1]);
    const x = readAxis('x');
    // Up one side of the curve to its highest place, and back along the axis.
    const shape = numbers(d('plot-density'));
    [x(1.8), foot, x(2)].forEach((place, i) => {
      expect(shape[i]).toBeCloseTo(place, 1);
    });
    expect(shape[3]).toBeLessThan(foot - 50);
    // The enlarged one has a scale of its own: 5000 a second are 5 a millisecond, 0.005 a microsecond.
    const wide = readAxis('x', 1);
    expect(numbers(d('plot-density', 1))[2]).toBeCloseTo(wide(2000), 1);
    expect(numbers(d('plot-density', 1))[3]).toBeCloseTo(readAxis('y', 1)(0.005), 1);
    expect(
      Number(
        host
          .querySelectorAll('.plot-chart')[1]
          ?.querySelector('.plot-instant-burst rect')
          ?.getAttribute('width'),
      ),
    ).toBeCloseTo(wide(2300) - wide(1800), 1);
  });

  it('lies between bounds where it was not found, open to the side that has none', async () => {
    show(plot({ bounds: [0.001, null] }));
    await ready();
    const zone = path('plot-bounds');
    const left = readAxis('x')(1);
    const right = Number(/H([\d.]+)$/.exec(d('plot-frame'))?.[1]);
    expect(Number(zone?.getAttribute('x'))).toBeCloseTo(left, 1);
    expect(Number(zone?.getAttribute('width'))).toBeCloseTo(right - left, 1);
    expect(path('plot-density')).toBeUndefined();
    const rows = [...host.querySelectorAll('tbody tr')].map((row) => row.textContent);
    expect(rows).toContain('seal opens withinafter 1');
  });
});

describe('SealPlot of a whole shot', () => {
  it('shows the time around bulge and opening, and marks what came after it', async () => {
    const onset: PlotInstant = { ...exit, kind: 'onset', time: 0.01, low: 0.01, high: 0.01 };
    const burst: PlotInstant = { ...exit, kind: 'burst', time: 0.02, low: 0.02, high: 0.02 };
    const times = Float64Array.from({ length: 100 }, (_, i) => i / 1000 + 0.0005);
    show(
      <SealPlot
        times={times}
        front={times.map((time) => (time < 0.02 ? 0.004 : 0.003))}
        frontU={times.map(() => 1e-4)}
        instants={[onset, burst]}
        posterior={null}
        bounds={null}
      />,
    );
    await ready();
    // From 10 to 20 ms and 4 ms on either side: 6.5 to 19.5 ms whole, 20.5 to 23.5 ms torn.
    expect(d('plot-used').match(/M/g)).toHaveLength(14);
    expect(d('plot-refused').match(/M/g)).toHaveLength(4);
    await expect.element(page.getByText('after the opening', { exact: true })).toBeVisible();
  });
});

describe('BudgetChart', () => {
  const entry = (source: string, type: 'A' | 'B', contribution: number): BudgetEntry => ({
    source,
    type,
    distribution: 'normal',
    u: 1,
    unit: 'm',
    sensitivity: contribution,
    contribution,
    dof: null,
  });

  it('sorts by size, with shares of the sum of squares and bars in proportion', () => {
    show(
      <BudgetChart
        entries={[
          entry('clock', 'B', 0.03),
          entry('scale', 'B', 0.04),
          entry('air pressure', 'B', 0.000_08),
        ]}
        combined={0.05}
        unit={MS}
      />,
    );
    const rows = [...host.querySelectorAll('tbody tr')].map((row) => ({
      name: row.querySelector('th')?.textContent,
      cells: [...row.querySelectorAll('td')].map((cell) => cell.textContent),
      bar: row.querySelector('rect')?.getAttribute('width'),
    }));
    // A 3-4-5 triangle: 0.04^2 / 0.05^2 = 64 %.
    expect(rows).toEqual([
      { name: 'scale, type B', cells: ['0.040', '64 %'], bar: '80%' },
      { name: 'clock, type B', cells: ['0.030', '36 %'], bar: '60%' },
      // To the same place as the others: it changes nothing in what is stated.
      { name: 'air pressure, type B', cells: ['< 0.001', '< 1 %'], bar: '0.16%' },
    ]);
  });
});

describe('the plots together', () => {
  it.each(['light', 'dark'])('pass the accessibility rules, %s', async (theme) => {
    document.documentElement.dataset.theme = theme;
    show(
      <main>
        <PositionPlot positions={positions} curve={curve} instants={[exit]} zone={null} />
        <Timeline events={EVENTS} from="exit" coverage={0.95} />
        <BudgetChart
          entries={[
            {
              source: 'scale',
              type: 'B',
              distribution: 'normal',
              u: 1,
              unit: 'm',
              sensitivity: 1,
              contribution: 1,
              dof: null,
            },
          ]}
          combined={1}
          unit={MS}
        />
      </main>,
    );
    await ready();
    const { violations } = await axe.run(host);
    expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
    delete document.documentElement.dataset.theme;
  });
});
