import { describe, expect, it, vi } from 'vitest';
import { createInspecting } from '../../../src/app/inspecting';
import { leftOutPixels, residualReading } from '../../../src/app/inspectionReadings';
import { ExitframeError } from '../../../src/core/reason';
import type { FrameInspection } from '../../../src/image/types';
import { exampleInspection } from '../../fixtures/inspection';

/** A crew whose answers are given by hand, by frame. */
function slowCrew() {
  const asked: number[] = [];
  const answers = new Map<number, (inspection: FrameInspection | null) => void>();
  const failures = new Map<number, (error: unknown) => void>();
  return {
    asked,
    answer: (frame: number) => answers.get(frame)?.(exampleInspection(frame)),
    fail: (frame: number, error: unknown) => failures.get(frame)?.(error),
    none: (frame: number) => answers.get(frame)?.(null),
    reduce: {
      inspect: (frame: number) => {
        asked.push(frame);
        return new Promise<FrameInspection | null>((resolve, reject) => {
          answers.set(frame, resolve);
          failures.set(frame, reject);
        });
      },
    },
  };
}

describe('laying frames open', () => {
  it('never shows an answer for a frame that was left meanwhile, and skips those passed over', async () => {
    const crew = slowCrew();
    const inspecting = createInspecting(crew);
    inspecting.ask(1);
    inspecting.ask(2);
    inspecting.ask(3);
    expect(crew.asked).toEqual([1]);
    crew.answer(1);
    await vi.waitFor(() => expect(crew.asked).toEqual([1, 3]));
    expect(inspecting.state.value).toEqual({ kind: 'loading', frame: 3 });
    crew.answer(3);
    await vi.waitFor(() => expect(inspecting.state.value.kind).toBe('ready'));
    const now = inspecting.state.value;
    expect(now.kind === 'ready' && now.inspection.frame).toBe(3);
  });

  it('shows again at once what it has, and asks anew after the film was measured anew', async () => {
    const crew = slowCrew();
    const inspecting = createInspecting(crew);
    inspecting.ask(1);
    crew.answer(1);
    await vi.waitFor(() => expect(inspecting.state.value.kind).toBe('ready'));
    inspecting.ask(null);
    expect(inspecting.state.value.kind).toBe('none');
    inspecting.ask(1);
    expect(inspecting.state.value.kind).toBe('ready');
    inspecting.reset();
    inspecting.ask(1);
    expect(inspecting.state.value).toEqual({ kind: 'loading', frame: 1 });
    expect(crew.asked).toEqual([1, 1]);
  });

  it('drops an answer from before a reset', async () => {
    const crew = slowCrew();
    const inspecting = createInspecting(crew);
    inspecting.ask(1);
    inspecting.reset();
    crew.answer(1);
    inspecting.ask(2);
    await vi.waitFor(() => expect(crew.asked).toEqual([1, 2]));
    crew.answer(2);
    await vi.waitFor(() => expect(inspecting.state.value.kind).toBe('ready'));
    inspecting.ask(1);
    expect(crew.asked).toEqual([1, 2, 1]);
  });

  it('says why it failed and tries again when asked again; tells a frame outside the flight', async () => {
    const crew = slowCrew();
    const inspecting = createInspecting(crew);
    inspecting.ask(1);
    crew.fail(1, new ExitframeError('noFrame', 'The film has no frame 1.'));
    await vi.waitFor(() => expect(inspecting.state.value.kind).toBe('failed'));
    inspecting.ask(1);
    expect(crew.asked).toEqual([1, 1]);
    crew.none(1);
    await vi.waitFor(() => expect(inspecting.state.value).toEqual({ kind: 'outside', frame: 1 }));
  });
});

describe('the planes of a fit', () => {
  it('come down to residual over noise among the pixels fitted', () => {
    const inspection = exampleInspection(4);
    expect(residualReading(inspection)).toEqual({ rms: 2, largest: expect.any(Number) });
    // One column of 19 pixels.
    expect(leftOutPixels(inspection)).toBe(19);
    const { residual, weight } = inspection;
    if (residual === null || weight === null) throw new Error('no planes');
    const outlier = weight.indexOf(0);
    const spoilt = residual.map((one, i) => (i === outlier ? 1000 : one));
    expect(residualReading({ ...inspection, residual: spoilt })?.rms).toBeCloseTo(2, 9);
    expect(residualReading({ ...inspection, residual: null })).toBeNull();
    // Pixels beyond the reach of the fit tell nothing of it, nor are they left out.
    const far = {
      ...inspection,
      residual: residual.slice().fill(90, 0, 3),
      weight: weight.slice(),
    };
    far.weight.fill(-1, 0, 3);
    expect(residualReading(far)?.rms).toBeCloseTo(2, 9);
    expect(leftOutPixels(far)).toBe(19);
    expect(residualReading({ ...inspection, weight: new Float32Array(weight.length) })).toBeNull();
  });
});
