import { describe, expect, it } from 'vitest';
import type { GreyFrame } from '../../../../src/core/frame';
import { calibrateFromBoards } from '../../../../src/image/chessboard/calibrate';
import { findBoard } from '../../../../src/image/chessboard/findBoard';
import { loadVision } from '../../../../src/image/opencv/vision';
import { shows } from '../../geometry/pinhole';
import { normalStream } from '../../noise';

/** A board of 8 x 6 fields before a bending camera that may turn: drawn by rays, four by four a pixel. */
interface Scene {
  readonly yaw: number;
  readonly pitch: number;
  readonly turn: number;
  readonly depth: number;
  readonly noise?: number;
  /** Part of the frame that something hides. */
  readonly hidden?: (x: number, y: number) => boolean;
}
const WIDTH = 360;
const HEIGHT = 270;
const LENS = { focal: 380, principal: [183, 131] as const, k1: -0.22, k2: 0.06 };
const FIELD = 0.03;

const toBoard = (scene: Scene, x: number, y: number) => {
  const [ud, vd] = [(x - LENS.principal[0]) / LENS.focal, (y - LENS.principal[1]) / LENS.focal];
  let [u, v] = [ud, vd];
  for (let i = 0; i < 8; i++) {
    const r2 = u * u + v * v;
    const bent = 1 + LENS.k1 * r2 + LENS.k2 * r2 * r2;
    [u, v] = [ud / bent, vd / bent];
  }
  const y1 = Math.cos(scene.pitch) * v + Math.sin(scene.pitch);
  const z1 = -Math.sin(scene.pitch) * v + Math.cos(scene.pitch);
  const x1 = Math.cos(scene.yaw) * u + Math.sin(scene.yaw) * z1;
  const z = -Math.sin(scene.yaw) * u + Math.cos(scene.yaw) * z1;
  const [X, Y] = [(x1 / z) * scene.depth, (y1 / z) * scene.depth];
  // The camera looks at the board's middle whichever way it is turned.
  const [mx, my] = middleOf(scene);
  const [c, s] = [Math.cos(scene.turn), Math.sin(scene.turn)];
  return [c * (X - mx) + s * (Y - my), -s * (X - mx) + c * (Y - my)] as const;
};
const middleOf = ({ yaw, pitch, depth }: Scene) =>
  [Math.tan(yaw) * depth, (Math.tan(pitch) * depth) / Math.cos(yaw)] as const;

const grey = (scene: Scene, x: number, y: number): number => {
  if (scene.hidden?.(x, y)) return 90;
  const [bx, by] = toBoard(scene, x, y);
  const column = Math.floor(bx / FIELD + 4);
  const row = Math.floor(by / FIELD + 3);
  if (column < -1 || column > 8 || row < -1 || row > 6) return 120;
  if (column < 0 || column > 7 || row < 0 || row > 5) return 210;
  return (column + row) % 2 === 0 ? 40 : 210;
};

/** Finely only where the pixel's corners and middle differ. */
function averageOver(scene: Scene, x: number, y: number): number {
  const middle = grey(scene, x, y);
  const probes = [
    [-0.5, -0.5],
    [0.5, -0.5],
    [-0.5, 0.5],
    [0.5, 0.5],
  ].map(([dx = 0, dy = 0]) => grey(scene, x + dx, y + dy));
  if (probes.every((value) => value === middle)) return middle;
  let sum = 0;
  for (const dy of [-0.375, -0.125, 0.125, 0.375]) {
    for (const dx of [-0.375, -0.125, 0.125, 0.375]) sum += grey(scene, x + dx, y + dy);
  }
  return sum / 16;
}

function picture(scene: Scene, index = 0): GreyFrame {
  const normal = normalStream(index + 1);
  const data = new Uint8Array(WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++) {
      const value = averageOver(scene, x, y);
      data[y * WIDTH + x] = Math.max(
        0,
        Math.min(255, Math.round(value + (scene.noise ?? 2) * normal())),
      );
    }
  }
  return { index, width: WIDTH, height: HEIGHT, data, white: 255 };
}

/** Where the camera shows the inner corner (i, j), counted from the board's middle. */
const cornerAt = (scene: Scene, i: number, j: number) => {
  const [mx, my] = middleOf(scene);
  const [c, s] = [Math.cos(scene.turn), Math.sin(scene.turn)];
  const [bx, by] = [i * FIELD, j * FIELD];
  return shows({ ...LENS, yaw: scene.yaw, pitch: scene.pitch }, [
    mx + c * bx - s * by,
    my + s * bx + c * by,
    scene.depth,
  ]);
};
const truth = (scene: Scene) =>
  [-3, -2, -1, 0, 1, 2, 3].flatMap((i) => [-2, -1, 0, 1, 2].map((j) => cornerAt(scene, i, j)));

const boardOf = (frame: GreyFrame, size: Parameters<typeof findBoard>[1] = null) => {
  const board = findBoard(frame, size);
  if (!board.ok) throw new Error(board.reason.message);
  return board.value;
};
const missOf = (scene: Scene, board: ReturnType<typeof boardOf>) => {
  const places = truth(scene);
  return board.corners.map(({ at: [x, y] }) =>
    Math.min(...places.map(([tx, ty]) => Math.hypot(x - tx, y - ty))),
  );
};

const SCENES: readonly Scene[] = [
  { yaw: 0, pitch: 0, turn: 0.1, depth: 0.34 },
  { yaw: 0.45, pitch: 0.1, turn: -0.3, depth: 0.36 },
  { yaw: -0.4, pitch: 0.25, turn: 1.3, depth: 0.4 },
  { yaw: 0.1, pitch: -0.5, turn: 0.6, depth: 0.38 },
  { yaw: -0.3, pitch: -0.35, turn: -0.8, depth: 0.36 },
];

const BOARDS = SCENES.map((scene, i) => findBoard(picture(scene, i), null));
const boards = () =>
  BOARDS.map((board) => {
    if (!board.ok) throw new Error(board.reason.message);
    return board.value;
  });

describe('findBoard', () => {
  it.each(SCENES.map((scene, i) => [i, scene] as const))(
    'finds all corners to sub-pixel, however the board is turned: %i',
    (i, scene) => {
      const board = boards()[i];
      if (board === undefined) throw new Error('no board');
      expect(board.corners).toHaveLength(35);
      expect([board.columns, board.rows].sort()).toEqual([5, 7]);
      const miss = missOf(scene, board);
      expect(Math.sqrt(miss.reduce((sum, m) => sum + m * m, 0) / 35)).toBeLessThan(0.04);
      // Neighbours on the board are neighbours in its count: columns and rows turn as x and y do.
      const at = new Map(board.corners.map((c) => [`${c.column},${c.row}`, c.at]));
      const [o, a, b] = ['0,0', '1,0', '0,1'].map((k) => at.get(k) as readonly [number, number]);
      if (!o || !a || !b) throw new Error('no corner');
      expect((a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])).toBeGreaterThan(0);
    },
  );

  it('takes what a half-hidden board shows, and only the part asked for', () => {
    const scene: Scene = { ...(SCENES[0] as Scene), hidden: (x) => x > 225 };
    const part = boardOf(picture(scene));
    expect(part.corners.length).toBeGreaterThanOrEqual(20);
    expect(part.corners.length).toBeLessThan(35);
    // Where the hiding edge runs through a corner's surroundings the corner is drawn aside.
    const near = missOf(scene, part).filter((miss) => miss < 0.15);
    expect(near.length).toBeGreaterThanOrEqual(part.corners.length - 3);
    const asked = boardOf(picture(SCENES[0] as Scene), { columns: 4, rows: 5 });
    expect(asked.corners).toHaveLength(20);
  });

  it('refuses a picture without a board', () => {
    const blank = picture({ ...(SCENES[0] as Scene), hidden: () => true, noise: 6 });
    const board = findBoard(blank, null);
    expect(board.ok ? '' : board.reason.code).toBe('noBoard');
  });
});

describe('calibrateFromBoards', () => {
  it('finds the lens that drew the pictures', async () => {
    const lens = calibrateFromBoards(boards(), WIDTH, HEIGHT, await loadVision());
    if (!lens.ok) throw new Error(lens.reason.message);
    const { k1, k2, focal, centre, centreU, rms } = lens.value;
    expect(Math.abs(k1.value - LENS.k1)).toBeLessThan(3.5 * k1.u);
    expect(Math.abs(k2.value - LENS.k2)).toBeLessThan(3.5 * k2.u);
    expect(Math.abs(focal.value - LENS.focal)).toBeLessThan(3.5 * focal.u);
    expect(Math.hypot(centre[0] - 183, centre[1] - 131)).toBeLessThan(5 * centreU);
    expect(k1.u).toBeLessThan(0.01);
    expect(focal.u / focal.value).toBeLessThan(0.005);
    expect(rms).toBeLessThan(0.05);
  });

  it('leaves out corners that something has drawn aside', async () => {
    const spoilt = boards().map((board, v) => ({
      ...board,
      corners: board.corners.map((corner, i) =>
        (i + v) % 17 === 5
          ? { ...corner, at: [corner.at[0] + 1.5, corner.at[1]] as const }
          : corner,
      ),
    }));
    const lens = calibrateFromBoards(spoilt, WIDTH, HEIGHT, await loadVision());
    if (!lens.ok) throw new Error(lens.reason.message);
    expect(lens.value.rms).toBeLessThan(0.05);
    expect(Math.abs(lens.value.focal.value - LENS.focal)).toBeLessThan(3.5 * lens.value.focal.u);
  });

  it('refuses too few views, and views all alike', async () => {
    const vision = await loadVision();
    const few = calibrateFromBoards(boards().slice(0, 2), WIDTH, HEIGHT, vision);
    expect(few.ok ? '' : few.reason.code).toBe('tooFewBoards');
    const one = boards()[0] as ReturnType<typeof boardOf>;
    const normal = normalStream(3);
    const jitter = () => 0.03 * normal();
    const alike = [0, 1, 2].map((frame) => ({
      ...one,
      frame,
      corners: one.corners.map((corner) => ({
        ...corner,
        at: [corner.at[0] + jitter(), corner.at[1] + jitter()] as const,
      })),
    }));
    const lens = calibrateFromBoards(alike, WIDTH, HEIGHT, vision);
    expect(lens.ok ? '' : lens.reason.code).toBe('boardsAlike');
  });
});
