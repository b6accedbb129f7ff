import { describe, expect, it } from 'vitest';
import { frameAtTime } from '../../../src/app/frameAtTime';
import { buildClock } from '../../../src/clock/clock';
import type { Timing } from '../../../src/shot/schema';

const info = { width: 64, height: 32, frameCount: 20, playbackRate: 30 };
const timing: Timing = {
  source: 'recordingRate',
  recordingRate: { value: 1000, u: 0 },
  exposure: null,
  readout: { direction: 'right', lineTime: { value: 1e-5, u: 0 } },
  droppedFrames: [{ after: 9, count: 3 }],
};

describe('the frame at a time', () => {
  const clock = buildClock(timing, info, null);
  if (!clock.ok) throw new Error(clock.reason.message);

  it.each([0, 4, 9, 10, 19])('is frame %i at that frame’s own time and place', (frame) => {
    const time = clock.value.timeAt(frame, 40, 5);
    expect(frameAtTime(clock.value, info.frameCount, time, 40, 5)).toBeCloseTo(frame, 9);
  });

  it('runs evenly between frames, also over lost ones, and on beyond the film', () => {
    const at = (time: number) => frameAtTime(clock.value, info.frameCount, time, 0, 0);
    expect(at(0.0045)).toBeCloseTo(4.5, 9);
    expect(at(0.011)).toBeCloseTo(9.5, 9);
    expect(at(-0.002)).toBeCloseTo(-2, 9);
    expect(at(0.024)).toBeCloseTo(21, 9);
  });
});
