import { beforeEach, describe, expect, it } from 'vitest';
import { calibrationStopped } from '../../../src/app/calibration';
import type { Calibrator, OnFault, StartCalibrator } from '../../../src/app/crew';
import { createTask } from '../../../src/app/task';
import { ExitframeError } from '../../../src/core/reason';
import type { CalibrateApi } from '../../../src/protocol/calibrate';
import { faultOf } from '../../../src/protocol/threadFault';

const never = () => new Promise<never>(() => undefined);

/** Threads as they were started: whether each has ended, and its way to say that it died. */
let threads: { ended: boolean; die: OnFault }[];
let start: StartCalibrator;
beforeEach(() => {
  threads = [];
  start = (onFault): Calibrator => {
    const thread = { ended: false, die: onFault };
    threads.push(thread);
    return {
      lineTime: never,
      lensFromBoards: never,
      lensFromEdges: never,
      dispose() {
        thread.ended = true;
      },
    };
  };
});

describe('a task', () => {
  it('tells its share, then what it found, and ends its thread', async () => {
    const task = createTask<number, CalibrateApi>(start, calibrationStopped);
    let tell: (share: number) => void = () => undefined;
    let answer: (found: number) => void = () => undefined;
    const running = task.run((_thread, onShare) => {
      tell = onShare;
      return new Promise<number>((resolve) => {
        answer = resolve;
      });
    });
    expect(task.state.value).toEqual({ kind: 'running', share: 0 });
    tell(0.5);
    expect(task.state.value).toEqual({ kind: 'running', share: 0.5 });
    answer(7);
    await running;
    expect(task.state.value).toEqual({ kind: 'done', found: 7 });
    // The last word of progress may come after the answer.
    tell(1);
    expect(task.state.value).toEqual({ kind: 'done', found: 7 });
    expect(threads.map(({ ended }) => ended)).toEqual([true]);
  });

  it('is over once it is cancelled, though its thread never answers', async () => {
    const task = createTask<number, CalibrateApi>(start, calibrationStopped);
    const running = task.run(never);
    task.cancel();
    await running;
    expect(task.state.value).toEqual({ kind: 'idle' });
    expect(threads[0]?.ended).toBe(true);
  });

  it('gives the reason where the work fails', async () => {
    const task = createTask<number, CalibrateApi>(start, calibrationStopped);
    await task.run(async () => {
      throw new ExitframeError('notFootage', 'No film.', 'Choose one.');
    });
    const reason = { code: 'notFootage', message: 'No film.', remedy: 'Choose one.' };
    expect(task.state.value).toEqual({ kind: 'failed', reason });
    expect(threads[0]?.ended).toBe(true);
  });

  it('says that its thread died, instead of waiting for ever', () => {
    const task = createTask<number, CalibrateApi>(start, calibrationStopped);
    void task.run(never);
    threads[0]?.die(faultOf('out of memory'));
    expect(task.state.value).toMatchObject({
      kind: 'failed',
      reason: {
        code: 'calibrationStopped',
        values: { because: 'threadFailed', said: 'out of memory' },
      },
    });
    expect(threads[0]?.ended).toBe(true);
  });

  it('keeps what was found before when cancelled', async () => {
    const task = createTask<number, CalibrateApi>(start, calibrationStopped);
    await task.run(async () => 3);
    void task.run(never);
    task.cancel();
    expect(task.state.value).toEqual({ kind: 'done', found: 3 });
    expect(threads.map(({ ended }) => ended)).toEqual([true, true]);
    task.cancel();
    expect(task.state.value).toEqual({ kind: 'done', found: 3 });
  });

  it('goes by the work begun last, whichever answers later', async () => {
    const task = createTask<string, CalibrateApi>(start, calibrationStopped);
    let late: (found: string) => void = () => undefined;
    const first = task.run(
      () =>
        new Promise<string>((resolve) => {
          late = resolve;
        }),
    );
    await task.run(async () => 'second');
    late('first');
    await first;
    expect(task.state.value).toEqual({ kind: 'done', found: 'second' });
    expect(threads.map(({ ended }) => ended)).toEqual([true, true]);
  });

  it('forgets everything at a reset', async () => {
    const task = createTask<number, CalibrateApi>(start, calibrationStopped);
    await task.run(async () => 3);
    void task.run(never);
    task.reset();
    expect(task.state.value).toEqual({ kind: 'idle' });
    expect(threads[1]?.ended).toBe(true);
  });

  it('starts no thread for work that cannot begin', () => {
    const task = createTask<number, CalibrateApi>(start, calibrationStopped);
    task.refuse({ code: 'nothingChosen', message: 'No file.' });
    expect(task.state.value).toMatchObject({ kind: 'failed' });
    expect(threads).toEqual([]);
  });
});
