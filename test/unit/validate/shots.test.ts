import { describe, expect, it } from 'vitest';
import { throughH264 } from '../../validate/codec';
import { drawHiddenShot } from '../../validate/hiddenShot';
import { recordShot } from '../../validate/record';
import { renderFilm, visibleShare } from '../../validate/render/film';
import { randomStream } from '../../validate/render/random';
import { drawShot } from '../../validate/shot';

const kind = { radius: 12, contrastToNoise: 15, surface: 'matt' } as const;
const drawn = () => drawShot({ ...kind, step: 0.6, sweep: 0, sightings: 8 }, randomStream(1, 2));

describe('shots', () => {
  it('are the same for the same seed, records included', async () => {
    const record = () => recordShot(drawn(), { random: randomStream(4), boundEvery: 8 });
    const first = await record();
    expect(first).toHaveLength(8);
    expect(first.some(({ refused }) => refused === null)).toBe(true);
    expect(await record()).toEqual(first);
  });

  it('have their ball at the place and level they say', () => {
    const shot = drawn();
    const frames = renderFilm(shot, randomStream(5));
    expect(frames).toHaveLength(48);
    const { ball } = shot.sightings[3] as (typeof shot.sightings)[number];
    const at = Math.round(ball.y) * shot.width + Math.round(ball.x);
    const bright = frames[shot.before + 3]?.data[at] ?? 0;
    const empty = frames[0]?.data[at] ?? 0;
    expect(bright - empty).toBeGreaterThan(30);
  });

  it('hide half the ball in many frames, and show it whole in some', () => {
    const shot = drawHiddenShot(kind, randomStream(6));
    const shares = shot.sightings.map(({ ball, fragment }) =>
      visibleShare(ball, shot.backdrop, fragment, shot),
    );
    for (const hider of ['flange', 'frame edge', 'fragment'] as const) {
      const by = shares.filter((_, i) => shot.sightings[i]?.hiddenBy === hider);
      expect(by.filter((share) => share > 0.35 && share < 0.65).length).toBeGreaterThanOrEqual(4);
    }
    const whole = shares.filter((_, i) => shot.sightings[i]?.hiddenBy === 'nothing');
    expect(whole.every((share) => share === 1)).toBe(true);
    expect(whole.length).toBeGreaterThanOrEqual(6);
  });

  it('come through H.264 frame by frame, the worse the harder it is pressed', async () => {
    const frames = renderFilm(drawn(), randomStream(7)).slice(18, 28);
    const off = async (crf: number) => {
      const back = await throughH264(frames, crf);
      expect(back).toHaveLength(frames.length);
      let sum = 0;
      let n = 0;
      back.forEach(({ data }, i) => {
        data.forEach((value, p) => {
          sum += Math.abs(value - (frames[i]?.data[p] ?? 0));
          n++;
        });
      });
      return sum / n;
    };
    const light = await off(4);
    expect(light).toBeLessThan(1.5);
    expect(await off(40)).toBeGreaterThan(light + 1);
  });
});
