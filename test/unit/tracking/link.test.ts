import { describe, expect, test } from 'vitest';
import type { Candidate, Rim } from '../../../src/image/types';
import { linkTrack } from '../../../src/tracking/link';
import { predictPath } from '../../../src/tracking/predict';
import type { FrameCandidates, TrackPrior } from '../../../src/tracking/types';
import { normalStream } from '../noise';

const RATE = 12_000;
const RADIUS = 30;
const timeOf = (frame: number) => frame / RATE;
const prior: TrackPrior = {
  axis: null,
  muzzle: [100, 64],
  radius: RADIUS,
  timeOf,
  placed: [],
  seeds: [],
};

/** A film as candidates: things that move at px a frame from a place, seen from one frame to another. */
interface Thing {
  readonly from: readonly [number, number];
  readonly step: readonly [number, number];
  readonly frames: readonly [number, number];
  readonly score: number;
  readonly visible?: number;
  readonly rim?: Rim;
  /** Change of the step per frame, as a share. */
  readonly slows?: number;
}

function film(length: number, things: readonly Thing[], scatter = 1): FrameCandidates[] {
  const normal = normalStream(7);
  return Array.from({ length }, (_, frame) => {
    const candidates: Candidate[] = things
      .filter(({ frames: [a, b] }) => frame >= a && frame <= b)
      .map(({ from, step, frames, score, visible, slows, rim }) => {
        const k = frame - frames[0];
        const gone = k - ((slows ?? 0) * k * k) / 2;
        return {
          x: from[0] + step[0] * gone + scatter * normal(),
          y: from[1] + step[1] * gone + scatter * normal(),
          score,
          visible: visible ?? 1,
          ...(rim === undefined ? {} : { rim }),
        };
      });
    return { frame, candidates };
  });
}

const ball: Thing = {
  from: [110, 64],
  step: [24, 0.3],
  frames: [40, 74],
  score: 0.92,
  slows: 4e-4,
};
const petals: Thing = { from: [95, 66], step: [0, 0], frames: [0, 90], score: 0.45, visible: 0.3 };
const fragments: Thing[] = [
  { from: [120, 50], step: [41, -6], frames: [36, 50], score: 0.5, visible: 0.4 },
  { from: [115, 80], step: [18, 7], frames: [37, 48], score: 0.55, visible: 0.5 },
  { from: [130, 60], step: [33, 1], frames: [36, 58], score: 0.47, visible: 0.4 },
];

describe('linking candidates to a track', () => {
  test('the ball is picked among seal and fragments, with axis and speed', () => {
    const track = linkTrack(film(100, [petals, ...fragments, ball]), prior);
    if (!track.ok) throw new Error(track.reason.message);
    const { points, axis, speed, rivals } = track.value;
    expect(points.length).toBeGreaterThanOrEqual(33);
    expect(points.at(-1)?.frame).toBe(74);
    // The seal's petals lie where the ball comes out and may pass for it before it is there.
    const flight = points.filter(({ frame }) => frame >= 40);
    expect(points.length - flight.length).toBeLessThan(2);
    expect(flight.every(({ candidate }) => candidate.score === 0.92)).toBe(true);
    expect(Math.atan2(axis[1], axis[0])).toBeCloseTo(Math.atan2(0.3, 24), 2);
    // Mean over its path: 24 px a frame less half of 34 x 4e-4.
    expect(speed / RATE).toBeGreaterThan(23.6);
    expect(speed / RATE).toBeLessThan(24.1);
    expect(rivals.some(({ reason }) => reason.code === 'standsStill')).toBe(true);
  });

  test('frames without the ball are bridged, and its path tells where it is in them', () => {
    const gaps = new Set([43, 50, 51, 52, 60, 66]);
    const frames = film(100, [ball], 0.5).map((frame) =>
      gaps.has(frame.frame) ? { ...frame, candidates: [] } : frame,
    );
    const track = linkTrack(frames, prior);
    if (!track.ok) throw new Error(track.reason.message);
    expect(track.value.points.length).toBe(35 - gaps.size);
    const predict = predictPath(track.value, timeOf);
    for (const frame of [38, 51, 60]) {
      const k = frame - 40;
      const [x, y] = predict(frame);
      expect(Math.abs(x - (110 + 24 * (k - 2e-4 * k * k)))).toBeLessThan(1.5);
      expect(Math.abs(y - (64 + 0.3 * (k - 2e-4 * k * k)))).toBeLessThan(1.5);
    }
  });

  test('the place to measure from lies on the path where a hidden ball is sighted off it', () => {
    const frames = film(100, [ball], 0.3).map((frame) =>
      frame.frame === 40
        ? { ...frame, candidates: [{ x: 121, y: 64, score: 0.6, visible: 0.5 }] }
        : frame,
    );
    const track = linkTrack(frames, prior);
    if (!track.ok) throw new Error(track.reason.message);
    const first = track.value.points.find(({ frame }) => frame === 40);
    expect(first?.candidate.x).toBe(121);
    expect(Math.abs((first?.at[0] ?? 0) - 110)).toBeLessThan(2);
  });

  test('two frames are enough for a track', () => {
    const track = linkTrack(film(60, [{ ...ball, frames: [40, 41] }]), prior);
    if (!track.ok) throw new Error(track.reason.message);
    expect(track.value.points.map(({ frame }) => frame)).toEqual([40, 41]);
    expect(track.value.speed / RATE).toBeGreaterThan(20);
  });

  test('a slow ball is followed as well as a fast one', () => {
    const slow: Thing = { from: [110, 64], step: [0.9, 0], frames: [20, 180], score: 0.9 };
    const track = linkTrack(film(200, [slow], 0.4), prior);
    if (!track.ok) throw new Error(track.reason.message);
    expect(track.value.points.length).toBeGreaterThan(150);
    expect(track.value.speed / RATE).toBeCloseTo(0.9, 1);
  });

  test('centres placed by a person stand for what was found there', () => {
    const frames = film(100, [ball], 0.3);
    const seeds = [
      { frame: 44, x: 205.5, y: 65 },
      { frame: 39, x: 86, y: 64 },
    ];
    const track = linkTrack(frames, { ...prior, placed: seeds });
    if (!track.ok) throw new Error(track.reason.message);
    const byFrame = new Map(track.value.points.map((point) => [point.frame, point.candidate]));
    expect(byFrame.get(44)).toMatchObject({ x: 205.5, y: 65, score: 1 });
    expect(byFrame.get(39)).toMatchObject({ x: 86, y: 64 });
  });

  test('a rolling shutter along the flight changes the speed, not the track', () => {
    const lineTime = 5e-7;
    const rolled: TrackPrior = {
      ...prior,
      timeOf: (frame, x) => frame / RATE + lineTime * (1000 - x),
    };
    const plain = linkTrack(film(100, [ball], 0.3), prior);
    const track = linkTrack(film(100, [ball], 0.3), rolled);
    if (!track.ok || !plain.ok) throw new Error('no track');
    expect(track.value.points.length).toBe(plain.value.points.length);
    // x = x0 + v (n T + l (1000 - x)): the step per frame is v T / (1 + v l).
    const step = plain.value.speed / RATE;
    const v = track.value.speed;
    expect(v / RATE / (1 + v * lineTime)).toBeCloseTo(step, 1);
    const predict = predictPath(track.value, rolled.timeOf);
    expect(Math.abs(predict(55)[0] - (110 + 24 * (15 - 2e-4 * 225)))).toBeLessThan(1.5);
  });
});

describe('no ball', () => {
  const fails = (frames: FrameCandidates[], given = prior, code = 'noBall') => {
    const track = linkTrack(frames, given);
    if (track.ok) throw new Error(`took ${track.value.points.length} sightings for the ball`);
    expect(track.reason.code).toBe(code);
    expect(track.reason.remedy).toBeTruthy();
    return track.reason.message;
  };

  test('nothing at all', () => {
    expect(fails(film(80, []))).toContain('80 frames');
  });

  test('only seal and fragments', () => {
    expect(fails(film(100, [petals, ...fragments]))).toMatch(/though \d+ of 100 frames/);
  });

  test('a thing that stands still, however round', () => {
    const still = { ...ball, step: [0, 0] as const, slows: 0 };
    expect(fails(film(100, [still]))).toContain('hardly moves');
  });

  test('round things here and there without a common path', () => {
    const normal = normalStream(5);
    const frames = Array.from({ length: 60 }, (_, frame) => ({
      frame,
      candidates:
        frame % 9 === 0
          ? [{ x: 500 + 250 * normal(), y: 64 + 40 * normal(), score: 0.8, visible: 0.9 }]
          : [],
    }));
    fails(frames);
  });

  test('a ball against the stated direction, faster than any, or past the muzzle by far', () => {
    const frames = film(100, [ball]);
    fails(frames, { ...prior, axis: [-1, 0] }, 'againstDirection');
    fails(frames, { ...prior, maxSpeed: 15 * RATE });
    fails(frames, { ...prior, muzzle: [100, 160] }, 'besideMuzzle');
    expect(linkTrack(frames, { ...prior, axis: [1, 0], maxSpeed: 30 * RATE }).ok).toBe(true);
  });
});

/** A sharp round edge of the ball's size, and what other things have of it. */
const sharpRim: Rim = { size: 1, round: 0.95, sharp: 0.7, contrast: 90 };
const rimmed: Thing = { ...ball, rim: sharpRim };
const linked = (things: readonly Thing[], given: Partial<TrackPrior> = {}, scatter = 1) =>
  linkTrack(film(100, things, scatter), { ...prior, ...given });

/** The place of the track in a frame, and what its rivals are charged with. */
function judged(things: readonly Thing[], given: Partial<TrackPrior> = {}, scatter = 1) {
  const track = linked(things, given, scatter);
  if (!track.ok) throw new Error(track.reason.message);
  const { points, rivals } = track.value;
  return {
    at: (frame: number) => points.find((point) => point.frame === frame)?.candidate,
    rivals: rivals.map(({ reason }) => reason.code),
  };
}

const refusal = (things: readonly Thing[], given: Partial<TrackPrior> = {}) => {
  const track = linked(things, given);
  return track.ok ? 'taken' : track.reason.code;
};

describe('the ball among things like it', () => {
  // Each is seen longer or scores higher than the ball, so that it would win were it not judged.
  test('a smaller wad that follows it', () => {
    const wad: Thing = {
      from: [110, 66],
      step: [14, 0.2],
      frames: [45, 90],
      score: 0.95,
      rim: { ...sharpRim, size: 0.8 },
    };
    expect(judged([wad, rimmed]).at(60)?.score).toBe(0.92);
  });

  test('its shadow: as fast, set off, softer, seen longer', () => {
    const shadow: Thing = {
      ...rimmed,
      from: [110, 100],
      frames: [40, 80],
      score: 0.93,
      rim: { size: 1.02, round: 0.9, sharp: 0.15, contrast: -40 },
    };
    expect(judged([shadow, rimmed]).at(60)?.score).toBe(0.92);
  });

  test('its reflection: as fast, set off, less of it seen', () => {
    const reflection: Thing = {
      ...rimmed,
      from: [110, 78],
      frames: [38, 74],
      score: 0.93,
      rim: { size: 1, round: 0.55, sharp: 0.6, contrast: 20 },
    };
    const { at, rivals } = judged([reflection, rimmed]);
    expect(at(60)?.score).toBe(0.92);
    expect(rivals).toContain('lessAlike');
  });

  test('a companion as good as the ball that comes from beside the muzzle', () => {
    const beside: Thing = { ...rimmed, from: [110, 100], score: 0.91 };
    expect(judged([beside, rimmed]).at(60)?.score).toBe(0.92);
  });

  test('a round thing of quite another size is none, however alone', () => {
    expect(refusal([{ ...rimmed, rim: { ...sharpRim, size: 0.6 } }])).toBe('noBall');
    expect(refusal([{ ...rimmed, rim: { ...sharpRim, size: 0.8 } }])).toBe('taken');
  });

  test('a disc that tumbles: round in half of its frames, and seen in twice as many', () => {
    const frames = film(100, [rimmed]).map(({ frame, candidates }) => {
      const shown: Candidate = {
        x: 110 + 11 * (frame - 38),
        y: 60,
        score: 0.93,
        visible: 1,
        rim: { ...sharpRim, round: frame % 4 < 2 ? 0.95 : 0.3, size: frame % 4 < 2 ? 1 : 0.85 },
      };
      return { frame, candidates: frame < 38 ? candidates : [...candidates, shown] };
    });
    const track = linkTrack(frames, prior);
    if (!track.ok) throw new Error(track.reason.message);
    expect(track.value.points.find(({ frame }) => frame === 60)?.candidate.score).toBe(0.92);
  });

  test('mist without an edge, seen all the time', () => {
    const mist: Thing = { from: [110, 64], step: [8, 0], frames: [38, 99], score: 0.75 };
    expect(judged([mist, rimmed]).at(60)?.score).toBe(0.92);
  });
});

describe('what a ball cannot do', () => {
  test('become faster in free flight', () => {
    const { step, frames } = rimmed;
    expect(refusal([{ ...rimmed, step, frames, slows: -0.008 }])).toBe('noBall');
    // Within what a slant of the picture feigns.
    expect(refusal([{ ...rimmed, step, frames, slows: -0.001 }])).toBe('taken');
  });

  test('lose more speed than the air can take', () => {
    const scrap: Thing = { ...rimmed, slows: 0.008 };
    const slowing = 1e-4;
    expect(refusal([scrap])).toBe('taken');
    expect(refusal([scrap], { slowing })).toBe('noBall');
    expect(refusal([rimmed], { slowing })).toBe('taken');
    // A ball so light that the air can.
    expect(refusal([scrap], { slowing: 5e-4 })).toBe('taken');
  });
});

describe('two that could be the ball', () => {
  const second: Thing = { ...rimmed, from: [95, 70], step: [17, 0.8], frames: [42, 80] };

  test('neither is taken', () => {
    const track = linked([rimmed, second]);
    if (track.ok) throw new Error('one was taken');
    expect(track.reason.code).toBe('twoBalls');
    expect(track.reason.message).toMatch(/frames 40 to 74/);
    expect(track.reason.message).toMatch(/frames 42 to 80/);
  });

  test('a place said to be the ball decides', () => {
    for (const [frame, x, y] of [
      [60, 110 + 24 * 20, 70],
      [60, 95 + 17 * 18, 84],
    ] as const) {
      const { at } = judged([rimmed, second], { seeds: [{ frame, x: x + 8, y: y - 5 }] });
      expect(Math.abs((at(60)?.x ?? 0) - x)).toBeLessThan(8);
      expect(at(60)?.score).toBe(0.92);
    }
  });

  test('one that is clearly less like the ball does not make two, though seen for longer', () => {
    const less: Thing = { ...second, frames: [42, 95], rim: { ...sharpRim, size: 0.89 } };
    const { at, rivals } = judged([rimmed, less]);
    expect(at(60)?.x).toBeGreaterThan(550);
    expect(rivals).toContain('lessAlike');
  });

  test('one somewhat less like the ball but seen for longer does: something may cover the ball in part', () => {
    const covered: Thing = { ...second, frames: [42, 95], rim: { ...sharpRim, size: 0.92 } };
    const track = linked([rimmed, covered]);
    expect(track.ok ? null : track.reason.code).toBe('twoBalls');
  });

  test('nor does one that is seen in fewer frames', () => {
    const { at, rivals } = judged([rimmed, { ...second, frames: [42, 60] }]);
    expect(at(60)?.x).toBeGreaterThan(550);
    expect(rivals).toContain('fewerFrames');
  });

  test('one that flies another way makes two, even if it passes the muzzle farther off', () => {
    const aside: Thing = { ...second, from: [100, 86], frames: [42, 74] };
    expect(refusal([rimmed, aside])).toBe('twoBalls');
  });
});

describe('places said to be the ball', () => {
  test('steer to a weaker thing, and are not measurements', () => {
    const weak: Thing = { ...rimmed, from: [110, 70], step: [15, 0], frames: [42, 60], score: 0.7 };
    expect(judged([rimmed, weak]).at(50)?.score).toBe(0.92);
    const seeds = [{ frame: 50, x: 110 + 15 * 8 + 12, y: 78 }];
    const { at, rivals } = judged([rimmed, weak], { seeds });
    expect(at(50)).toMatchObject({ score: 0.7 });
    expect(rivals).toContain('besideSeeds');
  });

  test('find it among many that are more like the ball', () => {
    const many = Array.from(
      { length: 6 },
      (_, k): Thing => ({ ...rimmed, from: [105, 46 + 7 * k], step: [13 + 2 * k, 0.1] }),
    );
    const weak: Thing = { ...rimmed, from: [110, 64], step: [8, 0], frames: [42, 60], score: 0.7 };
    const { at } = judged([...many, weak], { seeds: [{ frame: 50, x: 170, y: 66 }] }, 0.2);
    expect(at(50)).toMatchObject({ score: 0.7 });
  });

  test('where nothing was found there, the place itself stands in', () => {
    const frames = film(100, [rimmed], 0.3).map((one) =>
      one.frame === 50 ? { ...one, candidates: [] } : one,
    );
    const seeds = [{ frame: 50, x: 110 + 240, y: 67 }];
    const track = linkTrack(frames, { ...prior, seeds });
    if (!track.ok) throw new Error(track.reason.message);
    expect(track.value.points.find(({ frame }) => frame === 50)?.candidate.x).toBe(350);
  });

  test('two that no one path passes refuse the track', () => {
    const seeds = [
      { frame: 45, x: 230, y: 66 },
      { frame: 60, x: 200, y: 66 },
    ];
    expect(refusal([rimmed], { seeds })).toBe('besideSeeds');
  });
});
