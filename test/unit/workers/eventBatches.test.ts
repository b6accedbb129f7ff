import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { inEventBatches } from '../../../workers/eventBatches';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

test('events are told of several at once, in order, and none is left', () => {
  const told: number[][] = [];
  const events = inEventBatches<number>((some) => told.push([...some]));
  for (let i = 0; i < 100; i++) events.add(i);
  expect(told).toEqual([]);
  vi.runAllTimers();
  expect(told).toEqual([Array.from({ length: 100 }, (_, i) => i)]);
  events.add(100);
  events.flush();
  expect(told.at(-1)).toEqual([100]);
  vi.runAllTimers();
  expect(told).toHaveLength(2);
});

test('what was dropped is not told of later', () => {
  const told: number[][] = [];
  const events = inEventBatches<number>((some) => told.push([...some]));
  events.add(1);
  events.drop();
  vi.runAllTimers();
  expect(told).toEqual([]);
});
