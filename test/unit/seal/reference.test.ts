import { describe, expect, it } from 'vitest';
import { isAvailable } from '../../../src/core/estimate';
import { buildBackground } from '../../../src/image/background';
import { locateBurst } from '../../../src/seal/burst';
import { observeSeal } from '../../../src/seal/observe';
import { REST_FRAMES, sealReference } from '../../../src/seal/reference';
import { drawScene, findComponents } from './scene';
import { evenClock, INTERVAL, randomScene, viewOf } from './shots';

/** A film of which a collar stays at the ring, in a clip of which most comes after the burst. */
const burst = 12.4 * INTERVAL;
const scene = randomScene(31, {
  frames: 44,
  onset: burst - 3.6 * INTERVAL,
  burst,
  bulge: 9,
  collar: 5,
  film: 210,
  ball: { contact: 16.5 * INTERVAL, speed: 15 / INTERVAL },
});
const { frames } = drawScene(scene);
const whole = buildBackground(frames);
if (!whole.ok) throw new Error(whole.reason.message);
const view = viewOf(scene);
const options = {
  coverage: 0.95,
  exposure: { value: scene.exposure, u: 0 },
  burstBetween: null,
  ballFrameLimit: 17,
  contact: null,
};

describe('sealReference', () => {
  it('shows the seal at rest with the noise of the whole clip', () => {
    const reference = sealReference(frames, whole.value);
    if (!reference.ok) throw new Error(reference.reason.message);
    expect(reference.value.noise).toEqual(whole.value.noise);
    const observations = frames.map((frame) =>
      observeSeal(frame, reference.value, view, findComponents),
    );
    for (const o of observations.slice(0, REST_FRAMES)) expect(o.changedArea).toBe(0);
    const found = locateBurst(observations, evenClock(INTERVAL), view, options);
    if (!found.ok) throw new Error(found.reason.message);
    expect(found.value.between).toEqual([12, 13]);
    const onset = found.value.bulgeOnset;
    if (!isAvailable(onset)) throw new Error(onset.unavailable.message);
    expect(onset.interval[0]).toBeLessThan(scene.onset);
    expect(onset.interval[1]).toBeGreaterThan(scene.onset);
  });

  it('is needed: against the whole clip the collar left behind hides the bulge', () => {
    const observations = frames.map((frame) =>
      observeSeal(frame, whole.value, view, findComponents),
    );
    const found = locateBurst(observations, evenClock(INTERVAL), view, options);
    expect(found.ok ? null : found.reason.code).toBe('sealRestHidden');
    const stated = locateBurst(observations, evenClock(INTERVAL), view, {
      ...options,
      burstBetween: [12, 13],
    });
    if (!stated.ok) throw new Error(stated.reason.message);
    const onset = stated.value.bulgeOnset;
    expect(isAvailable(onset) ? null : onset.unavailable.code).toBe('restHidden');
  });

  it('passes on why there is none', () => {
    const reference = sealReference(frames.slice(0, 2), whole.value);
    expect(reference.ok ? null : reference.reason.code).toBe('tooFewFrames');
  });
});
