import { describe, expect, it } from 'vitest';
import { drawn, regionBetween, withEdit } from '../../../src/ui/film/editing';
import { handlesOf } from '../../../src/ui/film/handles';
import type { FilmMode, FilmOverlays } from '../../../src/ui/film/props';

const image = { width: 640, height: 200 };
const overlays: FilmOverlays = {
  lengths: [
    { from: [10, 20], to: [110, 20], label: '200.00 mm' },
    { from: [0, 0], to: [0, 50], label: '100.00 mm' },
  ],
  muzzle: { point: [100, 80], axis: [1, 0], axisFitted: true },
  flightRegion: [90, 40, 500, 100],
  sealRegion: null,
  seeds: [],
  edges: [
    [
      [20, 10],
      [600, 12],
    ],
  ],
  plane: {
    corners: [
      [100, 50],
      [500, 40],
      [510, 150],
      [90, 160],
    ],
  },
  grid: null,
  positions: [
    {
      frame: 7,
      x: 200.25,
      y: 81.5,
      ux: 0.1,
      uy: 0.1,
      cov: 0,
      used: false,
      manual: false,
    },
  ],
  path: null,
  ballRadius: 20,
};

const handles = (mode: FilmMode, frame = 7) => handlesOf(mode, overlays, frame, image, 90);

describe('handles', () => {
  it('of a length are its ends; moving one leaves the other', () => {
    const [from, to] = handles({ kind: 'length', index: 1 });
    expect(from?.at).toEqual([0, 0]);
    expect(to?.direction).toEqual([0, 1]);
    expect(to?.moved([3.25, 60.5])).toEqual({
      kind: 'length',
      index: 1,
      from: [0, 0],
      to: [3.25, 60.5],
    });
    expect(handles({ kind: 'length', index: 2 })).toEqual([]);
  });

  it('stay inside the image', () => {
    const [from] = handles({ kind: 'length', index: 0 });
    expect(from?.moved([-50, 999])).toMatchObject({ from: [-0.5, 199.5] });
  });

  it('of a straight edge matter across it', () => {
    const [from, to] = handles({ kind: 'edge', index: 0 });
    expect(to?.label).toBe('Straight edge 1, second end');
    expect(to?.moved([590, 14])).toEqual({ kind: 'edge', index: 0, from: [20, 10], to: [590, 14] });
    const [dx = 1, dy = 0] = from?.direction ?? [];
    // Perpendicular to (580, 2).
    expect(dx * 580 + dy * 2).toBeCloseTo(0, 9);
  });

  it('of a plane are its corners in their order', () => {
    const corners = handles({ kind: 'plane' });
    expect(corners.map(({ label }) => label)).toEqual([
      'Plane corner 1, top left',
      'Plane corner 2, top right',
      'Plane corner 3, bottom right',
      'Plane corner 4, bottom left',
    ]);
    expect(corners[2]?.moved([700, 150.5])).toEqual({
      kind: 'plane',
      corner: 2,
      at: [639.5, 150.5],
    });
    const none = handlesOf({ kind: 'plane' }, { ...overlays, plane: null }, 7, image, 90);
    expect(none).toEqual([]);
  });

  it('of the muzzle keep a fitted axis fitted until the arrow is turned', () => {
    const [point, tip] = handles({ kind: 'muzzle' });
    expect(tip?.at).toEqual([190, 80]);
    expect(point?.moved([101, 82])).toEqual({ kind: 'muzzle', point: [101, 82], axis: null });
    // 3-4-5 triangle
    expect(tip?.moved([130, 120])).toEqual({
      kind: 'muzzle',
      point: [100, 80],
      axis: [0.6, 0.8],
    });
  });

  it('of the ball stand at its centre', () => {
    const [centre] = handles({ kind: 'point' });
    expect(centre?.moved([201, 80])).toEqual({ kind: 'point', frame: 7, at: [201, 80] });
  });

  it('of what is not marked yet wait about the middle, for the keyboard', () => {
    const bare = { ...overlays, muzzle: null, seeds: [], edges: [], flightRegion: null };
    const waiting = (mode: FilmMode) =>
      handlesOf(mode, bare, 8, image, 60).map(({ at, moved }) => ({ at, edit: moved(at) }));
    const middle = [319.5, 99.5];
    expect(waiting({ kind: 'muzzle' })).toEqual([
      { at: middle, edit: { kind: 'muzzle', point: middle, axis: null } },
    ]);
    expect(waiting({ kind: 'point' })).toEqual([
      { at: middle, edit: { kind: 'point', frame: 8, at: middle } },
    ]);
    expect(waiting({ kind: 'seed' })).toEqual([
      { at: middle, edit: { kind: 'seed', frame: 8, at: middle } },
    ]);
    const ends = { from: [159.5, 99.5], to: [479.5, 99.5] };
    expect(waiting({ kind: 'edge', index: 0 }).map(({ edit }) => edit)).toEqual([
      { kind: 'edge', index: 0, ...ends },
      { kind: 'edge', index: 0, ...ends },
    ]);
    for (const { edit } of waiting({ kind: 'region', which: 'flight' })) {
      expect(edit).toEqual({ kind: 'region', which: 'flight', region: [160, 50, 320, 100] });
    }
  });

  it('of a region move one corner against the opposite one, past it too', () => {
    const [topLeft] = handles({ kind: 'region', which: 'flight' });
    expect(topLeft?.at).toEqual([89.5, 39.5]);
    expect(topLeft?.moved([99.5, 59.5])).toMatchObject({ region: [100, 60, 490, 80] });
    expect(topLeft?.moved([609.5, 159.5])).toMatchObject({ region: [590, 140, 20, 20] });
  });
});

describe('regionBetween', () => {
  it('takes whole pixels, at least one, inside the image', () => {
    expect(regionBetween([10.2, 20.4], [14.4, 22.6], image)).toEqual([11, 21, 4, 2]);
    expect(regionBetween([30, 30], [30, 30], image)).toEqual([31, 31, 1, 1]);
    expect(regionBetween([-99, -99], [9999, 9999], image)).toEqual([0, 0, 640, 200]);
  });
});

describe('drawn', () => {
  it('is a length or region from press to release, a point where the pointer is', () => {
    const draw = (mode: FilmMode) => drawn(mode, overlays, 9, [50, 60], [70, 90], image);
    expect(draw({ kind: 'inspect' })).toBeNull();
    expect(draw({ kind: 'length', index: 2 })).toEqual({
      kind: 'length',
      index: 2,
      from: [50, 60],
      to: [70, 90],
    });
    expect(draw({ kind: 'edge', index: 0 })).toMatchObject({ kind: 'edge', to: [70, 90] });
    // The nearest corner to the press is the first.
    expect(draw({ kind: 'plane' })).toEqual({ kind: 'plane', corner: 0, at: [70, 90] });
    expect(
      drawn({ kind: 'plane' }, { ...overlays, plane: null }, 9, [50, 60], [70, 90], image),
    ).toBeNull();
    expect(draw({ kind: 'point' })).toEqual({ kind: 'point', frame: 9, at: [70, 90] });
    expect(draw({ kind: 'muzzle' })).toEqual({ kind: 'muzzle', point: [70, 90], axis: null });
    expect(draw({ kind: 'region', which: 'seal' })).toEqual({
      kind: 'region',
      which: 'seal',
      region: [51, 61, 20, 30],
    });
  });
});

describe('withEdit', () => {
  it('moves an end of an edge and one corner of the plane', () => {
    const edge = withEdit(overlays, { kind: 'edge', index: 0, from: [1, 2], to: [3, 4] });
    expect(edge.edges).toEqual([
      [
        [1, 2],
        [3, 4],
      ],
    ]);
    const plane = withEdit(overlays, { kind: 'plane', corner: 3, at: [80, 170] });
    expect(plane.plane?.corners).toEqual([
      [100, 50],
      [500, 40],
      [510, 150],
      [80, 170],
    ]);
  });

  it('shows each edit in its place and leaves the rest', () => {
    const edited = withEdit(overlays, { kind: 'length', index: 0, from: [1, 2], to: [3, 4] });
    expect(edited.lengths[0]).toEqual({ from: [1, 2], to: [3, 4], label: '200.00 mm' });
    expect(edited.lengths[1]).toBe(overlays.lengths[1]);
    expect(overlays.lengths[0]?.from).toEqual([10, 20]);
  });

  it('keeps showing a fitted axis while only the point moves', () => {
    const moved = withEdit(overlays, { kind: 'muzzle', point: [5, 6], axis: null });
    expect(moved.muzzle).toEqual({ point: [5, 6], axis: [1, 0], axisFitted: true });
    const turned = withEdit(overlays, { kind: 'muzzle', point: [5, 6], axis: [0, 1] });
    expect(turned.muzzle).toEqual({ point: [5, 6], axis: [0, 1], axisFitted: false });
  });

  it('puts a hand-placed centre in the place of the measured one', () => {
    const placed = withEdit(overlays, { kind: 'point', frame: 7, at: [1, 1] });
    expect(placed.positions).toHaveLength(1);
    expect(placed.positions[0]).toMatchObject({ frame: 7, x: 1, used: true, manual: true });
  });
});
