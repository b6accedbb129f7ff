import type { Scale } from '../shot/schema';
import { focalIsBetter } from './view';

/** One independent cause of what a view is not known to: the scale with it moved by its standard uncertainty. */
export interface ViewCause {
  readonly source: string;
  /** Standard uncertainty, in `unit`. */
  readonly u: number;
  readonly unit: string;
  readonly up: Scale;
  readonly down: Scale;
}

type Lens = NonNullable<Scale['lens']>;
type Plane = NonNullable<Scale['plane']>;

/**
 * What lens and plane are not known to, as independent causes. The correlated pair k1, k2 is split into two
 * independent ones (Cholesky). The focal length only scales the distortion's radius, to which k1 and k2 were
 * fitted; as a cause of its own it tells how far away the plane is.
 */
export function viewCauses(scale: Scale): ViewCause[] {
  const { lens, plane, cameraDistance } = scale;
  const causes: ViewCause[] = [];
  const add = (source: string, u: number, unit: string, moved: (by: number) => Scale) => {
    if (u > 0) causes.push({ source, u, unit, up: moved(1), down: moved(-1) });
  };
  if (lens !== null) {
    const withLens = (change: Partial<Lens>): Scale => ({ ...scale, lens: { ...lens, ...change } });
    const { k1, k2, correlation, centre, centreU } = lens;
    const bent = (by1: number, by2: number) =>
      withLens({
        k1: { ...k1, value: k1.value + by1 },
        k2: { ...k2, value: k2.value + by2 },
      });
    const alone = k2.u * Math.sqrt(1 - correlation ** 2);
    const both = k1.u > 0 ? correlation * k2.u : 0;
    add('lens distortion', k1.u > 0 ? 1 : 0, '1', (by) => bent(by * k1.u, by * both));
    add('lens distortion', alone > 0 ? 1 : 0, '1', (by) => bent(0, by * alone));
    add('lens centre', centreU, 'px', (by) =>
      withLens({ centre: [centre[0] + by * centreU, centre[1]] }),
    );
    add('lens centre', centreU, 'px', (by) =>
      withLens({ centre: [centre[0], centre[1] + by * centreU] }),
    );
  }
  if (plane === null) return causes;
  const withPlane = (change: Partial<Plane>): Scale => ({
    ...scale,
    plane: { ...plane, ...change },
  });
  for (let corner = 0; corner < 4; corner++) {
    for (const [dx, dy] of [
      [1, 0],
      [0, 1],
    ] as const) {
      add('corners of the plane', plane.cornerU, 'px', (by) => {
        const [a, b, c, d] = plane.corners.map(([x, y], i) => {
          const step = i === corner ? by * plane.cornerU : 0;
          return [x + step * dx, y + step * dy] as const;
        }) as unknown as Plane['corners'];
        return withPlane({ corners: [a, b, c, d] });
      });
    }
  }
  add('size of the plane', plane.u, 'm', (by) => withPlane({ width: plane.width + by * plane.u }));
  add('size of the plane', plane.u, 'm', (by) =>
    withPlane({ height: plane.height + by * plane.u }),
  );
  if (lens === null && cameraDistance === null) return causes;
  add('depth of the plane', plane.depthOffsetU, 'm', (by) =>
    withPlane({ depthOffset: plane.depthOffset + by * plane.depthOffsetU }),
  );
  if (lens !== null && focalIsBetter(scale)) {
    const { value, u } = lens.focal;
    add('focal length', u, 'px', (by) => ({
      ...scale,
      lens: { ...refocused(lens, value + by * u), focal: { value: value + by * u, u } },
    }));
  } else if (cameraDistance !== null) {
    const { value, u } = cameraDistance;
    add('camera distance', u, 'm', (by) => ({
      ...scale,
      cameraDistance: { value: value + by * u, u },
    }));
  }
  return causes;
}

/** The same distortion told in another focal length. */
function refocused(lens: Lens, focal: number): Lens {
  const ratio2 = (focal / lens.focal.value) ** 2;
  const { k1, k2 } = lens;
  return {
    ...lens,
    k1: { value: k1.value * ratio2, u: k1.u * ratio2 },
    k2: { value: k2.value * ratio2 ** 2, u: k2.u * ratio2 ** 2 },
  };
}
