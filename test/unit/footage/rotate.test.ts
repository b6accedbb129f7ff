import { describe, expect, it } from 'vitest';
import { quarterTurn, turnUpright, uprightSize } from '../../../src/footage/rotate';

/** 3 wide, 2 high. */
const PLANE = [1, 2, 3, 4, 5, 6];
/** Turned by hand, clockwise. */
const TURNED = {
  0: PLANE,
  90: [4, 1, 5, 2, 6, 3],
  180: [6, 5, 4, 3, 2, 1],
  270: [3, 6, 2, 5, 1, 4],
};

describe('turning upright', () => {
  it.each([0, 90, 180, 270] as const)('turns by %i degrees, 8 and 16 bits', (rotation) => {
    const bytes = turnUpright(Uint8Array.from(PLANE), 3, 2, rotation);
    expect(bytes).toEqual(Uint8Array.from(TURNED[rotation]));
    const deep = Uint16Array.from(PLANE, (value) => value * 10_000);
    expect(turnUpright(deep, 3, 2, rotation)).toEqual(
      Uint16Array.from(TURNED[rotation], (value) => value * 10_000),
    );
  });

  it('leaves the plane it was given as it was', () => {
    const plane = Uint8Array.from(PLANE);
    for (const rotation of [90, 180, 270] as const) turnUpright(plane, 3, 2, rotation);
    expect([...plane]).toEqual(PLANE);
  });

  it('swaps the sides at a quarter turn only', () => {
    expect(uprightSize(3, 2, 90)).toEqual({ width: 2, height: 3 });
    expect(uprightSize(3, 2, 270)).toEqual({ width: 2, height: 3 });
    expect(uprightSize(3, 2, 180)).toEqual({ width: 3, height: 2 });
    expect(uprightSize(3, 2, 0)).toEqual({ width: 3, height: 2 });
  });

  it('takes any angle for the nearest quarter turn', () => {
    expect([-90, 450, 179.9, -0.1, 360].map(quarterTurn)).toEqual([270, 90, 180, 0, 0]);
  });
});
