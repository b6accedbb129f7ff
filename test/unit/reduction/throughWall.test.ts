import { expect, it } from 'vitest';
import type { SharedInputs } from '../../../src/exit/types';
import { flightLine } from '../../../src/geometry/flightLine';
import { setScene } from '../../../src/reduction/scene';
import { throughWall } from '../../../src/reduction/throughWall';
import { inputs, WIDTH } from './scriptedFilm';

const METRES = 1.25e-3;
const DISTANCE = 1.5;

const point = (frame: number, along: number) => ({
  frame,
  frameTime: frame * 1e-3,
  line: 30,
  along,
  alongU: 0.1,
  timeU: 0,
  shifts: [0.25],
});

/** How far a plate shifts what is behind it, by Snell's law of refraction. */
function snell(sine: number, thickness: number, index: number): number {
  const inside = sine / index;
  return thickness * (sine / Math.sqrt(1 - sine ** 2) - inside / Math.sqrt(1 - inside ** 2));
}

it('sets centres in the bore, and only those, aside as a plate does', () => {
  const shot = inputs();
  const scene = setScene(shot);
  const muzzle = scene.muzzle.point;
  const points = [-90, -20, 15].map((along, i) => point(i, along));
  const shared = { shiftSources: [{ source: 'lens', u: 1, unit: '1' }] } as unknown as SharedInputs;
  const seen = throughWall(
    shot,
    scene,
    {
      points: { ok: true, value: points },
      line: flightLine(muzzle, [1, 0]),
      metresPerPixel: METRES,
    },
    shared,
  );
  expect(seen.shared.shiftSources?.map(({ source, u }) => [source, u])).toEqual([
    ['lens', 1],
    ['refraction in the wall of the tube', 1],
  ]);
  if (!seen.points.ok) throw new Error(seen.points.reason.message);
  const asides = seen.points.value.map(({ shifts }) => shifts?.[1] as number);
  expect(seen.points.value.map(({ shifts }) => shifts?.[0])).toEqual([0.25, 0.25, 0.25]);
  const middle = (WIDTH - 1) / 2 - muzzle[0];
  for (const i of [0, 1]) {
    const offAxis = ((points[i]?.along ?? 0) - middle) * METRES;
    const sine = Math.abs(offAxis) / Math.hypot(offAxis, DISTANCE);
    const aside = Math.abs(asides[i] ?? 0) * METRES;
    // To first order in the slant, here up to 0.16.
    expect(Math.abs(aside / snell(sine, 0.003, 1.5) - 1)).toBeLessThan(0.03);
  }
  expect(asides[2]).toBe(0);
});
