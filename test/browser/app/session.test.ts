import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type OnFault, threadDied } from '../../../src/app/crew';
import { completeShot } from '../../../src/app/draft';
import { draftStore } from '../../../src/app/drafts';
import { setFrameRejected, setMuzzle } from '../../../src/app/edits';
import { createSession, type Session } from '../../../src/app/session';
import { setupSceneStore } from '../../../src/app/setupScenes';
import { createSetups } from '../../../src/app/setups';
import { ExitframeError } from '../../../src/core/reason';
import { ENDED_SILENTLY, faultOf } from '../../../src/protocol/threadFault';
import { type FakeCrew, fakeCrew, hashOfName } from '../../fixtures/crew';
import { exampleReduction } from '../../fixtures/reduction';
import { stateInputs } from '../../fixtures/stateInputs';

let crew: FakeCrew;
let session: Session;
const clip = (name: string) => new File(['film'], name);
const codes = () => session.notices.list.value.map((one) => one.reason.code);
const hashed = () => vi.waitFor(() => expect(session.films.film.value?.sha256).not.toBeNull());

const start = () => {
  crew = fakeCrew();
  session = createSession(
    crew,
    draftStore(localStorage),
    setupSceneStore(localStorage),
    createSetups(localStorage),
  );
};

async function openReady(name = 'clip.mp4') {
  await session.openFiles([clip(name)]);
  await hashed();
  stateInputs(session);
}

/** The shot file of what is open, as it would be saved. */
function shotFile(name: string): File {
  const draft = session.shots.draft.value;
  const shot = draft === null ? null : completeShot(draft);
  if (!shot?.ok) throw new Error('The shot is not complete.');
  return new File([JSON.stringify(shot.value)], name);
}

/** The result stands for the draft, so that the next edit is compared with it. */
function measuredAsItStands() {
  const draft = session.shots.draft.value;
  expect(draft?.footage.sha256).toBe(crew.measured[0]?.footageSha256);
  expect(crew.measured[0]?.shot.footage).toEqual(draft?.footage);
  expect(draft && session.measuring.velocityOf(draft)).toBeDefined();
  expect(session.measuring.freshness.value).toBe('fresh');
}

beforeEach(() => {
  localStorage.clear();
  start();
});
afterEach(() => session.dispose());

describe('opening', () => {
  it('starts a new shot on footage and shows its first frame', async () => {
    await session.openFiles([clip('clip.mp4')]);
    expect(session.films.film.value?.info.frameCount).toBe(20);
    await vi.waitFor(() => expect(session.player.shown.value?.index).toBe(0));
    await hashed();
    expect(session.shots.draft.value?.footage).toEqual({
      path: 'clip.mp4',
      sha256: hashOfName('clip.mp4'),
      reading: { raw: null, fields: 'auto' },
    });
  });

  it('keeps what is open where the next file is no film', async () => {
    await openReady();
    const draft = session.shots.draft.value;
    await session.openFiles([clip('notes.txt')]);
    expect(codes()).toEqual(['notFootage']);
    expect(session.films.film.value?.info.name).toBe('clip.mp4');
    expect(session.shots.draft.value).toBe(draft);
  });

  it('waits for the footage of a shot file that came alone', async () => {
    await openReady();
    const file = shotFile('c.shot.json');
    session.dispose();
    start();
    await session.openFiles([file]);
    expect(session.awaited.value?.path).toBe('clip.mp4');
    await session.openFiles([clip('clip.mp4')]);
    expect(session.awaited.value).toBeNull();
    expect(session.shots.draft.value?.timing.recordingRate?.value).toBe(12000);
    expect(session.shots.unsaved.value).toBe(false);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(session.films.state.value.kind).toBe('open');
  });

  it('refuses footage of another hash, keeps what is open and offers a new shot', async () => {
    await openReady();
    const file = shotFile('c.shot.json');
    await session.openFiles([clip('before.mp4')]);
    await hashed();
    await session.openFiles([file, clip('other.mp4')]);
    expect(codes()).toContain('footageMismatch');
    const notice = session.notices.list.value.find((one) => one.reason.code === 'footageMismatch');
    expect(notice?.reason.message).toContain(hashOfName('clip.mp4').slice(0, 12));
    expect(notice?.reason.message).toContain(hashOfName('other.mp4').slice(0, 12));
    expect(session.films.film.value?.info.name).toBe('before.mp4');
    expect(crew.opened.at(-1)).toBe('before.mp4');

    notice?.actions[0]?.run('taken over');
    await vi.waitFor(() => expect(session.films.film.value?.info.name).toBe('other.mp4'));
    expect(session.shots.draft.value?.footage.sha256).toBe(hashOfName('other.mp4'));
    expect(session.shots.draft.value?.timing.recordingRate?.value).toBe(12000);
    expect(session.shots.unsaved.value).toBe(true);
  });

  it.each([
    ['{ "format": "exitframe-shot", "version": 99 }', 'newerVersion'],
    ['{ "format": "exitframe-shot", "version": 1, "wind": 3 }', 'invalidShot'],
    ['no json', 'notJson'],
  ])('says what is wrong with the shot file %s', async (text, code) => {
    await openReady();
    const draft = session.shots.draft.value;
    await session.openFiles([new File([text], 'bad.shot.json')]);
    expect(codes()).toEqual([code]);
    expect(session.shots.draft.value).toBe(draft);
  });

  it('offers inputs that were kept for the same footage', async () => {
    await openReady();
    await vi.waitFor(() => expect(localStorage.length).toBe(1));
    session.dispose();
    start();
    await session.openFiles([clip('clip.mp4')]);
    await vi.waitFor(() => expect(codes()).toEqual(['earlierInputs']));
    session.notices.list.value[0]?.actions[0]?.run('taken over');
    expect(session.shots.draft.value?.timing.recordingRate?.value).toBe(12000);
    session.shots.undo();
    expect(session.shots.draft.value?.timing.recordingRate).toBeNull();
  });

  it('keeps the inputs as they are once an edit is undone', async () => {
    const kept = () => JSON.stringify(Object.values(localStorage));
    await session.openFiles([clip('clip.mp4')]);
    session.shots.edit((draft) => ({ ...draft, notes: 'a slip' }), { label: 'notes' });
    await vi.waitFor(() => expect(kept()).toContain('a slip'));
    session.shots.undo();
    await vi.waitFor(() => expect(kept()).not.toContain('a slip'));
    expect(localStorage.length).toBe(1);
  });
});

describe('measuring', () => {
  it('tells rows and centres as they come, then holds the result', async () => {
    await openReady();
    const line = { origin: [5, 16], axis: [1, 0], from: -5, length: 64, halfWidth: 2 } as const;
    crew.events = [
      { kind: 'progress', stage: 'survey', done: 1, total: 20 },
      { kind: 'streakLine', line, frames: 20 },
      { kind: 'streakRow', frame: 0, row: new Float32Array(64) },
      { kind: 'streakRow', frame: 1, row: new Float32Array(64) },
      { kind: 'centre', frame: 1, x: 10, y: 16 },
    ];
    let finish: () => void = () => {};
    crew.conclude = (inputs) =>
      new Promise((resolve) => {
        finish = () => resolve(exampleReduction(inputs));
      });
    const { measuring } = session;
    const done = session.measure();
    await vi.waitFor(() => expect(measuring.streak.value.rows.size).toBe(2));
    expect(measuring.status.value).toEqual({
      kind: 'running',
      stage: 'survey',
      done: 1,
      total: 20,
    });
    expect(measuring.positions.value.map((one) => one.frame)).toEqual([1]);
    finish();
    await done;
    expect(measuring.status.value.kind).toBe('done');
    expect(measuring.positions.value).toHaveLength(10);
    expect(crew.measured[0]?.footageSha256).toBe(hashOfName('clip.mp4'));
  });

  it('waits for the hash that opening asked for, tells how far it is, and asks for no other', async () => {
    let [asked, done] = [0, () => {}];
    let tell: (share: number) => void = () => {};
    crew.hashing = (onShare) => {
      asked += 1;
      tell = onShare;
      return new Promise((resolve) => (done = resolve));
    };
    await session.openFiles([new File([new Uint8Array(40_000_000)], 'long.mp4')]);
    stateInputs(session);
    await vi.waitFor(() => expect(asked).toBe(1));
    const run = session.measure();
    await vi.waitFor(() =>
      expect(session.measuring.status.value).toMatchObject({ stage: 'identify', done: 0 }),
    );
    tell(0.25);
    expect(session.measuring.status.value).toEqual({
      ...{ kind: 'running', stage: 'identify' },
      ...{ done: 10, total: 40 },
    });
    done();
    await run;
    expect(session.measuring.status.value.kind).toBe('done');
    expect(crew.measured[0]?.footageSha256).toBe(hashOfName('long.mp4'));
    expect(asked).toBe(1);
    measuredAsItStands();
  });

  it('asks for the hash again where that failed', async () => {
    crew.hashing = () => Promise.reject(new ExitframeError('unreadable', 'It is gone.'));
    await session.openFiles([clip('clip.mp4')]);
    stateInputs(session);
    await vi.waitFor(() => expect(codes()).toContain('unreadable'));
    crew.hashing = async () => {};
    await session.measure();
    expect(crew.measured[0]?.footageSha256).toBe(hashOfName('clip.mp4'));
    measuredAsItStands();
  });

  it.each([
    ['not again where it came by the pictures itself', false],
    ['again where it was cancelled', true],
  ])('breaks off looking through the film, which is looked through %s', async (_, isCancelled) => {
    const line = { origin: [5, 16], axis: [1, 0], from: -5, length: 64, halfWidth: 2 } as const;
    const data = new Uint8Array(4);
    crew.events = [
      { kind: 'streakLine', line, frames: 20 },
      { kind: 'smallPicture', picture: { index: 3, width: 2, height: 2, data, white: 255 } },
    ];
    const [looks, ends] = [[] as string[], [] as number[]];
    crew.scenery = {
      ...crew.scenery,
      lookThrough: ({ info }) => {
        looks.push(info.name);
        return new Promise(() => {});
      },
    };
    Object.assign(crew, {
      startScenery: () => ({ ...crew.scenery, dispose: () => ends.push(looks.length) }),
    });
    await openReady();
    await vi.waitFor(() => expect(looks.length).toBeGreaterThan(0));
    await new Promise((resolve) => setTimeout(resolve, 500)); // what was stated has it look anew
    const before = looks.length;
    let finish = () => {};
    crew.conclude = async (inputs) => {
      await new Promise<void>((resolve) => (finish = resolve));
      if (isCancelled) throw new ExitframeError('cancelled', 'Cancelled.');
      return exampleReduction(inputs);
    };
    const done = session.measure();
    await vi.waitFor(() => expect(crew.measured).toHaveLength(1));
    expect(ends.at(-1)).toBe(before);
    expect(looks).toHaveLength(before);
    finish();
    await done;
    await new Promise((resolve) => setTimeout(resolve, 500));
    expect(looks).toHaveLength(isCancelled ? before + 1 : before);
    expect(session.scenery.pictures.value.map(({ index }) => index)).toEqual([3]);
  });

  it('sets later shots of a setup against the scene of the first one', async () => {
    const named = async (name: string) => {
      await openReady(name);
      session.shots.edit((draft) => ({ ...draft, name, setupId: 'bench' }), { label: 'setup' });
      await session.measure();
    };
    await named('first.mp4');
    await named('second.mp4');
    await session.measure();
    const earlier = crew.measured.map(({ setupScene }) => setupScene?.shotName ?? null);
    expect(earlier).toEqual([null, 'first.mp4', 'first.mp4']);
  });

  it('says what is missing instead of starting', async () => {
    await session.openFiles([clip('clip.mp4')]);
    await session.measure();
    expect(codes()).toEqual(['noRate']);
    expect(crew.measured).toEqual([]);
  });

  it('shows why a measurement failed, and keeps the result before it with its streak image', async () => {
    await openReady();
    const line = { origin: [5, 16], axis: [1, 0], from: -5, length: 1, halfWidth: 2 } as const;
    const filling = (frames: readonly number[]) => {
      const rows = frames.map((frame) => ({
        ...{ kind: 'streakRow' as const, frame },
        row: Float32Array.of(frame),
      }));
      crew.events = [{ kind: 'streakLine', line, frames: 20 }, ...rows];
    };
    const { measuring } = session;
    filling([0, 1, 2]);
    await session.measure();
    filling([0]);
    let kept: typeof measuring.streak.value.rows | undefined;
    crew.conclude = async () => {
      await vi.waitFor(() => expect(measuring.streak.value.rows.size).toBe(1));
      kept = measuring.keptStreak()?.rows;
      throw new ExitframeError('noBall', 'No ball was found.', 'Draw the region.');
    };
    await session.measure();
    expect(kept?.size).toBe(3);
    expect(measuring.streak.value.rows.size).toBe(3);
    const status = measuring.status.value;
    expect(status.kind === 'failed' && status.reason.code).toBe('noBall');
    expect(measuring.reduction.value).not.toBeNull();
  });

  it('goes back to where it was when it is cancelled', async () => {
    await openReady();
    crew.conclude = async () => {
      throw new ExitframeError('cancelled', 'The work was cancelled.');
    };
    await session.measure();
    expect(session.measuring.status.value.kind).toBe('idle');
    expect(codes()).toEqual([]);
  });

  it('can be cancelled while its inputs are still being gathered', async () => {
    await openReady();
    const never = new Promise<never>(() => undefined);
    const run = session.measuring.measure(() => never);
    await session.measuring.cancel();
    await run;
    expect(session.measuring.status.value.kind).toBe('idle');
    expect(crew.measured).toEqual([]);
  });

  it('forgets a result when other footage is opened', async () => {
    await openReady();
    await session.measure();
    await session.openFiles([clip('next.mp4')]);
    expect(session.measuring.reduction.value).toBeNull();
  });
});

describe('edits after a result', () => {
  const reject = (frame: number) =>
    session.shots.edit(setFrameRejected(frame, true), { label: `frame ${frame} rejected` });

  it('are fitted anew without the film, and undone the same way', async () => {
    await openReady();
    await session.measure();
    const used = () => session.measuring.positions.value.filter((one) => one.used).length;
    expect(used()).toBe(10);
    reject(4);
    await vi.waitFor(() => expect(used()).toBe(9));
    expect(crew.measured).toHaveLength(1);
    session.shots.undo();
    await vi.waitFor(() => expect(used()).toBe(10));
  });

  it('mark the result as outdated where the film is needed', async () => {
    await openReady();
    await session.measure();
    crew.conclude = async () => {
      throw new ExitframeError('pixelsNeeded', 'The film is needed.', 'Measure again.');
    };
    reject(4);
    await vi.waitFor(() => expect(session.measuring.freshness.value).toBe('measureAgain'));
    expect(session.measuring.refitProblem.value).toBeNull();
    session.shots.undo();
    await vi.waitFor(() => expect(session.measuring.freshness.value).toBe('fresh'));
  });

  it('mark the result as outdated while an input is missing', async () => {
    await openReady();
    await session.measure();
    session.shots.edit(setMuzzle(null), { label: 'muzzle removed' });
    await vi.waitFor(() => expect(session.measuring.freshness.value).toBe('measureAgain'));
    expect(session.measuring.reduction.value).not.toBeNull();
  });
});

describe('a thread that dies', () => {
  it('while another film is opened: the one before stays open, and is measured in new ones', async () => {
    await openReady();
    const { open, timestamps } = crew.film;
    const died = async () => {
      throw threadDied(ENDED_SILENTLY);
    };
    // It ends between two answers.
    Object.assign(crew.film, {
      open: async (...given: Parameters<typeof open>) => {
        const info = await open(...given);
        Object.assign(crew.film, { open: died });
        return info;
      },
      timestamps: died,
    });
    await session.openFiles([clip('other.mp4')]);
    expect(codes()).toEqual(['threadDied']);
    expect(session.films.state.value).toMatchObject({
      kind: 'open',
      film: { info: { name: 'clip.mp4' } },
    });

    Object.assign(crew.film, { open, timestamps });
    await session.measure();
    expect(crew.opened).toEqual(['clip.mp4', 'other.mp4', 'clip.mp4']);
    expect(session.measuring.status.value.kind).toBe('done');
  });

  it('while it looks through a film is told', async () => {
    let die: OnFault | null = null;
    Object.assign(crew, {
      startScenery: (onFault: OnFault) => {
        die = onFault;
        return { ...crew.scenery, dispose: () => {} };
      },
    });
    await openReady();
    const fault = await vi.waitFor(() => die ?? Promise.reject(new Error('not started')));
    fault(ENDED_SILENTLY);
    expect(codes()).toEqual(['sceneryStopped']);
    await session.measure();
    expect(session.measuring.status.value.kind).toBe('done');
  });

  it('is started again with the same footage, and nothing typed is lost', async () => {
    await openReady();
    const draft = session.shots.draft.value;
    crew.generations += 1;
    await session.recover(faultOf('out of memory'));
    expect(crew.opened).toEqual(['clip.mp4', 'clip.mp4']);
    expect(session.shots.draft.value).toBe(draft);
    expect(codes()).toEqual(['threadDied']);
  });

  it('leaves the film to the next measurement where it cannot be opened at once', async () => {
    await openReady();
    const { open } = crew.film;
    const gone = async () => {
      throw new ExitframeError('unreadable', 'It can no longer be read.', 'Put it back.');
    };
    Object.assign(crew.film, { open: gone });
    crew.generations += 1;
    await session.recover(faultOf(undefined));
    expect(codes()).toEqual(['threadDied', 'unreadable']);
    await session.measure();
    const status = session.measuring.status.value;
    expect(status.kind === 'failed' && status.reason.code).toBe('unreadable');

    Object.assign(crew.film, { open });
    await session.measure();
    expect(session.measuring.status.value.kind).toBe('done');
  });
});
