import { describe, expect, it } from 'vitest';
import { type SealViewParams, sealView } from '../../../src/seal/view';

const params: SealViewParams = {
  plane: [100, 60],
  axis: [2, 0],
  ballRadius: 20,
  region: null,
  frameWidth: 400,
  frameHeight: 120,
};

describe('sealView', () => {
  it('reaches from a little inside the plane to nearly two diameters outside', () => {
    const view = sealView(params);
    if (!view.ok) throw new Error(view.reason.message);
    expect(view.value.axis).toEqual([1, 0]);
    expect(view.value.region).toEqual([95, 34, 75, 52]);
    expect(view.value.halfAperture).toBe(26);
  });

  it('turns with the axis and stays in the frame', () => {
    const view = sealView({ ...params, axis: [0, -1] });
    if (!view.ok) throw new Error(view.reason.message);
    const [left, top, width, height] = view.value.region;
    expect([left, top, left + width, top + height]).toEqual([74, 0, 126, 65]);
  });

  it("takes a person's region, clipped to the frame", () => {
    const view = sealView({ ...params, region: [90, -10, 50, 500] });
    if (!view.ok) throw new Error(view.reason.message);
    expect(view.value.region).toEqual([90, 0, 50, 120]);
  });

  it.each<[string, Partial<SealViewParams>]>([
    ['the region is off the frame', { region: [500, 10, 30, 30] }],
    ['the plane is off the frame', { plane: [900, 60] }],
    ['the frame ends at the plane', { plane: [398, 60] }],
    ['the region lies wholly inside the tube', { region: [20, 20, 60, 60] }],
    ['the region starts far outside the plane', { region: [200, 20, 60, 60] }],
    ['there is no direction', { axis: [0, 0] }],
  ])('fails where %s', (_, changes) => {
    const view = sealView({ ...params, ...changes });
    expect(view.ok ? null : view.reason.code).toBe('sealRegionOutside');
  });
});
