import { describe, expect, it } from 'vitest';
import {
  completeShot,
  missingInputs,
  newDraft,
  type ShotDraft,
  validateDraft,
} from '../../../src/app/draft';
import {
  addLength,
  changeLength,
  changePlane,
  changeSeal,
  newLength,
  newPlane,
  placePoint,
  removeLength,
  setBackstop,
  setFrameRejected,
  setMuzzle,
  setScale,
  setSealInView,
  setSound,
  setTiming,
  withCorner,
} from '../../../src/app/edits';
import { infoOf } from '../../fixtures/crew';

const fresh = () => newDraft(infoOf('clip.mp4', 20), ['clip.mp4'], null);
const apply = (draft: ShotDraft, ...changes: ((draft: ShotDraft) => ShotDraft)[]) =>
  changes.reduce((now, change) => change(now), draft);

const ready = () =>
  apply(
    fresh(),
    setTiming({ recordingRate: { value: 12000, u: 0.6 } }),
    addLength({ ...newLength(1024, 256, 0), length: 0.2 }),
    setMuzzle({ point: [200, 100], u: 0.5, axis: null }),
  );

describe('a new draft', () => {
  it('asks for rate, length and muzzle plane, in the order of the work', () => {
    expect(missingInputs(fresh()).map((one) => [one.step, one.reason.code])).toEqual([
      ['clock', 'noRate'],
      ['scale', 'noLength'],
      ['scale', 'noMuzzle'],
    ]);
    const shot = completeShot(fresh());
    expect(shot.ok ? '' : shot.reason.code).toBe('noRate');
  });

  it('needs no length where a rectangle of known size is marked', () => {
    const plane = { ...newPlane(1024, 256), width: 0.2, height: 0.05 };
    const marked = apply(
      fresh(),
      setTiming({ recordingRate: { value: 12000, u: 0.6 } }),
      setMuzzle({ point: [200, 100], u: 0.5, axis: null }),
      setScale({ plane }),
    );
    expect(missingInputs(marked)).toEqual([]);
    const shot = completeShot(marked);
    expect(shot.ok && shot.value.scale).toMatchObject({ lengths: [], plane: { width: 0.2 } });
  });

  it('asks for the value of a length that is only drawn', () => {
    const drawn = apply(fresh(), addLength(newLength(1024, 256, 0)));
    expect(missingInputs(drawn).map((one) => one.reason.code)).toContain('lengthUnstated');
  });

  it('takes a fast container for the camera’s own clock, a slow one for playback', () => {
    const stamps = Float64Array.from({ length: 20 }, (_, i) => i / 240);
    const phone = newDraft({ ...infoOf('p.mp4', 20), playbackRate: 240 }, ['p.mp4'], stamps);
    expect(phone.timing.source).toBe('containerTimestamps');
    expect(newDraft(infoOf('c.mp4', 20), ['c.mp4'], stamps).timing.source).toBe('recordingRate');
  });

  it('names every image of a sequence', () => {
    const sequence = newDraft(infoOf('frames', 2), ['0001.png', '0002.png'], null);
    expect(sequence.footage).toEqual({
      paths: ['0001.png', '0002.png'],
      sha256: null,
      reading: { raw: null, fields: 'auto' },
    });
  });
});

describe('a complete draft', () => {
  it('is a shot that the schema accepts', () => {
    const shot = completeShot(ready());
    expect(shot.ok && shot.value.scale.lengths[0]?.length).toBe(0.2);
  });

  it('is refused where the ends of a length coincide', () => {
    const flat = apply(ready(), changeLength(0, { to: [256, 179], from: [256, 179] }));
    const shot = completeShot(flat);
    expect(shot.ok ? '' : shot.reason.message).toContain('same pixel');
  });
});

describe('edits', () => {
  it('leave the draft before them untouched', () => {
    const before = ready();
    const text = JSON.stringify(before);
    apply(before, removeLength(0), setSealInView(false), placePoint(3, [1, 2]));
    expect(JSON.stringify(before)).toBe(text);
  });

  it('reject and restore a frame', () => {
    const rejected = apply(ready(), setFrameRejected(7, true), setFrameRejected(3, true));
    expect(rejected.edits.rejectedFrames).toEqual([3, 7]);
    expect(apply(rejected, setFrameRejected(7, false)).edits.rejectedFrames).toEqual([3]);
  });

  it('keep one hand-placed centre a frame and use the frame again', () => {
    const placed = apply(
      ready(),
      setFrameRejected(4, true),
      placePoint(4, [10, 20]),
      placePoint(4, [11, 21]),
    );
    expect(placed.edits.manualPoints).toEqual([{ frame: 4, x: 11, y: 21, ux: 0.5, uy: 0.5 }]);
    expect(placed.edits.rejectedFrames).toEqual([]);
    expect(completeShot(placed).ok).toBe(true);
  });

  it('forget how far the microphone is from a backstop that is taken away', () => {
    const near = { value: 1, u: 0.01 };
    const sound = {
      offset: { value: 0, u: 1e-3 },
      microphone: { distance: near, toBackstop: near },
      backstopDistance: near,
    };
    const stated = apply(ready(), setSound(sound));
    expect(completeShot(stated).ok).toBe(true);
    const moved = apply(stated, setBackstop({ value: 1.5, u: 0.01 }));
    expect(moved.sound?.microphone.toBackstop).toEqual(near);
    const without = apply(moved, setBackstop(null));
    expect(without.sound).toEqual({
      ...sound,
      microphone: { distance: near, toBackstop: null },
      backstopDistance: null,
    });
    expect(completeShot(without).ok).toBe(true);
  });

  it('leave a backstop out where no sound is stated', () => {
    expect(apply(ready(), setBackstop({ value: 1, u: 0 })).sound).toBeNull();
  });

  it('bring the seal back into view with nothing set', () => {
    const away = apply(ready(), setSealInView(false));
    expect(away.seals).toBeNull();
    expect(apply(away, changeSeal({ burstBetween: [3, 4] })).seals?.muzzle?.burstBetween).toEqual([
      3, 4,
    ]);
  });
});

describe('a draft from storage', () => {
  it('comes back as it was, also unfinished', () => {
    for (const draft of [ready(), fresh(), apply(fresh(), addLength(newLength(64, 32, 0)))]) {
      const back = validateDraft(JSON.parse(JSON.stringify(draft)));
      expect(back).toEqual({ ok: true, value: draft });
    }
  });

  it.each([[null], [{}], ['text'], [{ scale: { lengths: [] } }]])('is refused as %j', (data) => {
    expect(validateDraft(data).ok).toBe(false);
  });
});

describe('a plane', () => {
  const marked = () => apply(ready(), setScale({ plane: newPlane(1024, 256) }));

  it('waits for both its sides before it is part of the shot', () => {
    const half = apply(marked(), changePlane({ width: 0.2 }));
    for (const draft of [marked(), half]) {
      expect(missingInputs(draft).map((one) => one.reason.code)).toEqual(['planeUnstated']);
      expect(completeShot(draft)).toMatchObject({ ok: false, reason: { code: 'planeUnstated' } });
    }
    const shot = completeShot(apply(half, changePlane({ height: 0.05 })));
    expect(shot.ok && shot.value.scale.plane).toMatchObject({ width: 0.2, height: 0.05 });
  });

  it('is kept as it stands in the browser, sides typed or not', () => {
    const kept = validateDraft(JSON.parse(JSON.stringify(marked())));
    expect(kept).toEqual({ ok: true, value: marked() });
  });

  it('keeps the order of its corners when one is moved', () => {
    const { corners } = newPlane(100, 60);
    expect(corners).toEqual([
      [25, 15],
      [75, 15],
      [75, 45],
      [25, 45],
    ]);
    expect(withCorner(corners, 2, [80, 50])).toEqual([
      [25, 15],
      [75, 15],
      [80, 50],
      [25, 45],
    ]);
  });

  it('is not changed where there is none', () => {
    const draft = ready();
    expect(changePlane({ width: 1 })(draft)).toBe(draft);
  });
});
