import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type History,
  mapHistory,
  record,
  redo,
  startHistory,
  undo,
} from '../../../src/app/history';

const edit = (label: string, mergeKey?: string) =>
  mergeKey === undefined ? { label } : { label, mergeKey };

describe('undo history', () => {
  it('gives back what stood before, and again what followed', () => {
    const start = startHistory('a');
    const later = record(record(start, 'b', edit('to b'), 0), 'c', edit('to c'), 10_000);
    expect(undo(later).present).toBe('b');
    expect(undo(undo(later)).present).toBe('a');
    expect(redo(undo(undo(later))).present).toBe('b');
    expect(redo(redo(undo(undo(later)))).present).toBe('c');
    expect(later.past.map((step) => step.label)).toEqual(['to b', 'to c']);
    expect(undo(later).future[0]?.label).toBe('to c');
  });

  it('has nothing to undo at the start and nothing to redo at the end', () => {
    const start = startHistory('a');
    expect(undo(start)).toBe(start);
    expect(redo(start)).toBe(start);
  });

  it('changes every state and no step, so that it can be gone through as before', () => {
    const edited = record(record(startHistory('a'), 'b', edit('to b'), 0), 'c', edit('to c'), 1);
    const upper = mapHistory(undo(edited), (text) => text.toUpperCase());
    expect(upper.present).toBe('B');
    expect(undo(upper).present).toBe('A');
    expect(redo(upper).present).toBe('C');
    expect(upper.past.map(({ label }) => label)).toEqual(['to b']);
  });

  it('forgets what was undone once something else is done', () => {
    const undone = undo(record(startHistory('a'), 'b', edit('to b'), 0));
    const other = record(undone, 'c', edit('to c'), 1);
    expect(other.future).toEqual([]);
    expect(undo(other).present).toBe('a');
  });

  it('makes one step of nudges that follow at once, and two after a pause', () => {
    let history = startHistory(0);
    for (let i = 1; i <= 5; i++) history = record(history, i, edit('nudge', 'handle'), i * 100);
    expect(history.past).toHaveLength(1);
    expect(undo(history).present).toBe(0);
    history = record(history, 6, edit('nudge', 'handle'), 60_000);
    expect(undo(history).present).toBe(5);
  });

  it('ignores an edit that changes nothing', () => {
    const start = startHistory('a');
    expect(record(start, 'a', edit('same'), 0)).toBe(start);
  });

  it('walks back to the start from anywhere', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1 }), { maxLength: 40 }), (values) => {
        let history: History<number> = startHistory(0);
        for (const [i, value] of values.entries()) {
          history = record(history, value, edit(`${value}`), i * 1e5);
        }
        const end = history.present;
        const steps = history.past.length;
        for (let i = 0; i < steps; i++) history = undo(history);
        expect(history.present).toBe(0);
        for (let i = 0; i < steps; i++) history = redo(history);
        expect(history.present).toBe(end);
      }),
    );
  });
});
