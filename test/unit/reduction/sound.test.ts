import { describe, expect, it } from 'vitest';
import { buildClock } from '../../../src/clock/clock';
import { isAvailable, type Quantity, type Reported } from '../../../src/core/estimate';
import { quantity } from '../../../src/core/quantity';
import { seededRandom } from '../../../src/core/random';
import { concludeSound, type FilmedMoments } from '../../../src/reduction/sound';
import { inputs } from './scriptedFilm';

/** Dry air of 20 C at 101 325 Pa carries sound at 343.2 m/s (common tables; from memory). */
const AIR = {
  temperature: { value: 293.15, u: 0.5 },
  pressure: { value: 101_325, u: 100 },
  humidity: { value: 0, u: 0 },
};
const SOUND = 343.2;
const RATE = 48_000;

/** What truly happened, s on the film's clock, m and m/s: 2 m to the backstop, 85 m/s on the way. */
const BURST = 0.0562;
const EXIT = 0.0569;
const BACKSTOP = 2;
const MEAN = 85;
const IMPACT = EXIT + (BACKSTOP - 0.015) / MEAN;
const MICROPHONE = 1.2;
const TO_BACKSTOP = 2.1;
/** Added to a time on the track it gives the time on the film. */
const OFFSET = 0.0021;

const known = (value: number, u: number): Quantity => quantity(value, u, null, 0.95);
const FILMED: FilmedMoments = {
  sealBurst: { ...known(BURST, 3e-5), bulgeOnset: known(BURST - 1e-3, 1e-4), posterior: null },
  exitTime: known(EXIT, 5e-6),
  exitVelocity: known(88, 0.2),
  lead: known(EXIT - BURST, 3e-5),
} as unknown as FilmedMoments;

/** A room's noise with the crack of the seal and the thud on the backstop, as the microphone hears them. */
function track({ noise = 0.002, loud = 0.5, seed = 1 } = {}) {
  const random = seededRandom(seed, 29);
  const firstSampleTime = -0.013;
  const heard = (event: number, way: number) => event + way / SOUND - OFFSET;
  const [crack, thud] = [heard(BURST, MICROPHONE), heard(IMPACT, TO_BACKSTOP)];
  const samples = Float32Array.from({ length: RATE / 5 }, (_, i) => {
    const t = firstSampleTime + i / RATE;
    const [sinceCrack, sinceThud] = [t - crack, t - thud];
    let x = noise * random.normal();
    if (sinceCrack > 0) {
      x += loud * Math.cos(2 * Math.PI * 2100 * sinceCrack) * Math.exp(-sinceCrack / 1e-3);
    }
    if (sinceThud > 0) {
      const rise = 1 - Math.exp(-sinceThud / 1e-4);
      x +=
        0.6 * loud * rise * Math.cos(2 * Math.PI * 700 * sinceThud) * Math.exp(-sinceThud / 3e-3);
    }
    return Math.max(-1, Math.min(1, x));
  });
  return { samples, sampleRate: RATE, firstSampleTime };
}

const stated = {
  offset: { value: OFFSET, u: 5e-5 },
  microphone: {
    distance: { value: MICROPHONE, u: 0.005 },
    toBackstop: { value: TO_BACKSTOP, u: 0.005 },
  },
  backstopDistance: { value: BACKSTOP, u: 0.002 },
};

function conclude({
  sound = stated as object | null,
  audio = track() as ReturnType<typeof track> | null,
  film = {} as Partial<FilmedMoments>,
  hasAudio = true,
} = {}) {
  const { shot, info } = inputs({ sound, air: AIR });
  const clock = buildClock(shot.timing, info, null);
  if (!clock.ok) throw new Error(clock.reason.message);
  return concludeSound({ shot, audio, info: { ...info, hasAudio } }, clock.value, {
    ...FILMED,
    ...film,
  });
}
const told = (conclusion: ReturnType<typeof conclude>) => {
  const { report } = conclusion;
  if (report === null || 'unavailable' in report) throw new Error('No sound.');
  return report;
};
const found = (reported: Reported): Quantity => {
  if (!isAvailable(reported)) throw new Error(reported.unavailable.message);
  return reported;
};
const codes = ({ warnings }: ReturnType<typeof conclude>) => warnings.map(({ code }) => code);

describe('the burst as heard', () => {
  it('is when it was, freed of its way through the air and of the offset', () => {
    const conclusion = conclude();
    const { burst, minusFilm, agrees } = told(conclusion);
    const { value, u } = found(burst);
    expect(Math.abs(value - BURST)).toBeLessThan(3 * u);
    expect(u).toBeLessThan(1e-4);
    expect(agrees).toBe(true);
    expect(Math.abs(found(minusFilm).value - (value - BURST))).toBeLessThan(1e-12);
    expect(codes(conclusion)).toEqual([]);
  });

  it('counts what is not known of offset and distance', () => {
    const u = (change: object) =>
      found(told(conclude({ sound: { ...stated, ...change } })).burst).u;
    const usual = u({});
    expect(u({ offset: { value: OFFSET, u: 4e-4 } })).toBeCloseTo(
      Math.sqrt(usual ** 2 - 5e-5 ** 2 + 4e-4 ** 2),
      9,
    );
    const distance = { value: MICROPHONE, u: 0.2 };
    expect(u({ microphone: { ...stated.microphone, distance } })).toBeCloseTo(
      Math.sqrt(usual ** 2 + (0.2 ** 2 - 0.005 ** 2) / SOUND ** 2),
      6,
    );
  });

  it('is warned of where a wrong distance sets it off the film', () => {
    const distance = { value: MICROPHONE + 0.5, u: 0.005 };
    const conclusion = conclude({
      sound: { ...stated, microphone: { ...stated.microphone, distance } },
    });
    const { agrees, minusFilm } = told(conclusion);
    expect(agrees).toBe(false);
    expect(found(minusFilm).value).toBeCloseTo(-0.5 / SOUND, 4);
    expect(codes(conclusion)).toEqual(['soundDisagrees']);
  });

  it('is found also where the film shows no burst, and then not compared', () => {
    const none = { unavailable: { code: 'burstNotSeen', message: 'Not seen.' } };
    const film = {
      sealBurst: { ...none, bounds: [null, null] as const },
      lead: none,
    };
    const { burst, minusFilm, agrees, meanSpeed } = told(conclude({ film }));
    expect(Math.abs(found(burst).value - BURST)).toBeLessThan(3 * found(burst).u);
    expect([minusFilm, agrees]).toEqual([none, null]);
    expect(Math.abs(found(meanSpeed).value - MEAN)).toBeLessThan(3 * found(meanSpeed).u);
    const unplaced = conclude({ film: { ...film, exitTime: none, exitVelocity: none } });
    expect(codes(unplaced)).toContain('soundUnplaced');
    expect(told(unplaced).meanSpeed).toEqual(none);
  });

  it('near the muzzle is warned of', () => {
    const microphone = { distance: { value: 0.3, u: 0.005 }, toBackstop: null };
    expect(codes(conclude({ sound: { ...stated, microphone } }))).toContain('microphoneNear');
  });
});

describe('the impact on a backstop', () => {
  it('gives the mean speed on the way', () => {
    const { impact, meanSpeed } = told(conclude());
    expect(Math.abs(found(impact).value - IMPACT)).toBeLessThan(3 * found(impact).u);
    const { value, u } = found(meanSpeed);
    expect(Math.abs(value - MEAN)).toBeLessThan(3 * u);
    expect(u).toBeLessThan(0.01 * MEAN);
  });

  it('needs no offset where burst and lead are known as well', () => {
    const { meanSpeed } = told(
      conclude({ sound: { ...stated, offset: { value: OFFSET + 5e-4, u: 2e-3 } } }),
    );
    const { value, u } = found(meanSpeed);
    expect(Math.abs(value - MEAN)).toBeLessThan(3 * u);
    expect(u).toBeLessThan(0.01 * MEAN);
  });

  it('tells it much less well where the way from backstop to microphone is not stated', () => {
    const microphone = { distance: stated.microphone.distance };
    const { meanSpeed } = told(conclude({ sound: { ...stated, microphone } }));
    const { value, u } = found(meanSpeed);
    expect(u).toBeGreaterThan(5 * found(told(conclude()).meanSpeed).u);
    expect(Math.abs(value - MEAN)).toBeLessThan(2 * u);
  });

  it('95 % intervals hold the mean speed', () => {
    const SHOTS = 60;
    let held = 0;
    for (let seed = 1; seed <= SHOTS; seed++) {
      const random = seededRandom(seed, 31);
      const about = ({ value, u }: { value: number; u: number }) => ({
        value: value + u * random.normal(),
        u,
      });
      const sound = {
        offset: about(stated.offset),
        microphone: {
          distance: about(stated.microphone.distance),
          toBackstop: about(stated.microphone.toBackstop),
        },
        backstopDistance: about(stated.backstopDistance),
      };
      const audio = track({ seed, noise: 0.01 });
      const [low, high] = found(told(conclude({ sound, audio })).meanSpeed).interval;
      if (low <= MEAN && MEAN <= high) held++;
    }
    // 95 % of 60 are 57; fewer than 51 would come by chance once in two hundred.
    expect(held).toBeGreaterThanOrEqual(51);
  });
});

describe('says why there is none', () => {
  it('of all', () => {
    expect(conclude({ sound: null })).toEqual({ report: null, warnings: [] });
    expect(conclude({ audio: null }).report).toMatchObject({
      unavailable: { code: 'soundUndecodable' },
    });
    expect(conclude({ audio: null, hasAudio: false }).report).toMatchObject({
      unavailable: { code: 'noSoundTrack' },
    });
  });

  it('of burst and impact', () => {
    const reason = (code: string) => ({ unavailable: { code } });
    const silent = told(conclude({ audio: track({ loud: 0 }) }));
    for (const one of [silent.burst, silent.impact, silent.meanSpeed, silent.minusFilm]) {
      expect(one).toMatchObject(reason('noSoundOnset'));
    }
    const overloaded = told(conclude({ audio: track({ loud: 9 }) }));
    expect(overloaded.burst).toMatchObject(reason('soundClipped'));
    const late = { ...track(), firstSampleTime: 3 };
    expect(told(conclude({ audio: late })).burst).toMatchObject(reason('soundTooShort'));
    const noBackstop = told(
      conclude({
        sound: {
          ...stated,
          microphone: { distance: stated.microphone.distance },
          backstopDistance: null,
        },
      }),
    );
    expect(noBackstop.impact).toMatchObject(reason('noBackstop'));
    expect(noBackstop.meanSpeed).toMatchObject(reason('noBackstop'));
  });
});
