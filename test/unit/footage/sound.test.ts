import { describe, expect, it } from 'vitest';
import type { AudioTrack } from '../../../src/core/film';
import { placeBlocks } from '../../../src/footage/ffmpeg/sound';
import { fixture, open } from './reading';

function loudest({ samples }: AudioTrack): number {
  let at = 0;
  samples.forEach((value, i) => {
    if (Math.abs(value) > Math.abs(samples[at] as number)) at = i;
  });
  return at;
}

describe('sound track', () => {
  // One sample at full scale in the left channel, 0.25 s into the sound, which starts so long after
  // the first frame (test/fixtures/footage/make.mjs). MKV holds whole milliseconds.
  it.each([
    ['click-aac.mp4', 0],
    ['click-late-sound.mov', 0.1],
    ['click-late-film.mkv', -0.1],
  ])('%s: a click is where it was filmed', async (name, start) => {
    const track = await (await open(fixture(name))).audio();
    if (track === null) throw new Error('no sound track');
    expect(track.sampleRate).toBe(48_000);
    expect(track.firstSampleTime).toBeCloseTo(start, 9);
    const click = track.firstSampleTime + loudest(track) / track.sampleRate;
    expect(click).toBeCloseTo(start + 0.25, 9);
  });

  it('averages the channels', async () => {
    const track = await (await open(fixture('click-late-sound.mov'))).audio();
    if (track === null) throw new Error('no sound track');
    expect(track.samples[loudest(track)]).toBeCloseTo(0.5, 4);
  });

  it('is null where there is none', async () => {
    const source = await open(fixture('mjpeg.avi'));
    expect(source.info.hasAudio).toBe(false);
    expect(await source.audio()).toBeNull();
  });
});

describe('placing blocks', () => {
  const stream = Float32Array.from([1, 2, 3, 4, 5, 6]);

  it('leaves a hole silent', () => {
    const placed = placeBlocks(
      stream,
      [
        { start: 100, length: 2 },
        { start: 105, length: 4 },
      ],
      2,
    );
    expect(placed.start).toBe(100);
    expect([...placed.samples]).toEqual([1, 2, 0, 0, 0, 3, 4, 5, 6]);
  });

  it('sets blocks whose times are rounded one behind the other', () => {
    const placed = placeBlocks(
      stream,
      [
        { start: 100, length: 3 },
        { start: 105, length: 3 },
      ],
      2,
    );
    expect([...placed.samples]).toEqual([1, 2, 3, 4, 5, 6]);
  });
});
