import { computed, type Signal, signal } from '@preact/signals';
import { proxy } from 'comlink';
import { AS_FOUND, type AudioTrack, type FootageInfo, type Reading } from '../core/film';
import { ExitframeError } from '../core/reason';
import type { FootageFile } from '../footage/source';
import type { RenewableCrew } from './crew';

export interface OpenFilm {
  readonly info: FootageInfo;
  readonly timestamps: Float64Array | null;
  readonly files: readonly FootageFile[];
  /** What is stated about how to read them. */
  readonly reading: Reading;
  /** Null until it has been worked out. */
  readonly sha256: string | null;
}

export type FilmState =
  | { readonly kind: 'none' }
  /** `before` stays open until the new film is. `hashed`: share of the file checked, 0..1. */
  | {
      readonly kind: 'opening';
      readonly footage: NamedFootage;
      readonly before: OpenFilm | null;
      readonly hashed: number | null;
    }
  | { readonly kind: 'open'; readonly film: OpenFilm };

/** Footage by its first file, and how many there are besides. */
export interface NamedFootage {
  readonly path: string;
  readonly more: number;
}

const inWords = ({ path, more }: NamedFootage) => (more > 0 ? `${path} and ${more} more` : path);

/** The footage has another hash than the shot file says. */
export class FootageMismatch extends ExitframeError {
  readonly found: string;
  constructor(expected: string, found: string, { path, more }: NamedFootage, opened: NamedFootage) {
    const is = opened.more > 0 ? 'are other files' : 'is another file';
    super(
      'footageMismatch',
      `The shot file was made from ${inWords({ path, more })} (SHA-256 ${expected.slice(0, 12)}…); ${inWords(opened)} ${is} (${found.slice(0, 12)}…).`,
      'Choose the footage it was made from, or take its inputs over into a new shot for this footage.',
      {
        values: {
          ...{ path, more, name: opened.path, others: opened.more },
          ...{ expected: expected.slice(0, 12), found: found.slice(0, 12) },
        },
      },
    );
    this.found = found;
  }
}

/** No threads have the film open. */
const NOWHERE = -1;

/** Opens footage. What was open stays open until the new film is accepted, and comes back where it is not. */
export function createFilmStore(crew: Pick<RenewableCrew, 'film' | 'ready' | 'generation'>) {
  const state = signal<FilmState>({ kind: 'none' });
  const film = computed<OpenFilm | null>(() => {
    const now = state.value;
    return now.kind === 'open' ? now.film : now.kind === 'opening' ? now.before : null;
  });
  let turn = 0;
  /** The threads that the film is open in, by how often they were replaced. */
  let openIn: number = NOWHERE;
  let sound: {
    readonly files: readonly FootageFile[];
    readonly track: Promise<AudioTrack | null>;
  } | null = null;

  const openHere = async (files: readonly FootageFile[], reading: Reading) => {
    const generation = crew.generation();
    const info = await crew.film.open(files, reading);
    openIn = generation;
    return info;
  };
  /** Where that fails too, no film is open rather than the one refused, and `ready` tries again. */
  const backTo = async ({ files, reading }: OpenFilm) => {
    try {
      await openHere(files, reading);
    } catch {
      openIn = NOWHERE;
      await crew.film.close().catch(() => {}); // dead threads have none open either
    }
  };
  const hash = (onShare: (share: number) => void) => crew.film.sha256(proxy(onShare));
  /** The hash being worked out. */
  let identifying: {
    readonly files: readonly FootageFile[];
    readonly sha256: Promise<string>;
    readonly share: Signal<number>;
  } | null = null;
  const identifyFiles = (files: readonly FootageFile[]) => {
    if (identifying?.files === files) return identifying;
    const share = signal(0);
    const mine = { files, share, sha256: hash((done) => (share.value = done)) };
    identifying = mine;
    const forget = () => {
      if (identifying === mine) identifying = null;
    };
    mine.sha256.then(forget, forget);
    return mine;
  };

  /**
   * Opens files; with `expected`, only if they have that hash. Gives null where another opening overtook it.
   * Throws the decoder's reason, or `FootageMismatch`.
   */
  const open = async (
    files: readonly FootageFile[],
    expected: (NamedFootage & { readonly sha256: string }) | null,
    reading: Reading = AS_FOUND,
  ): Promise<OpenFilm | null> => {
    const mine = ++turn;
    const before = film.value;
    const footage = { path: files[0]?.name ?? '', more: files.length - 1 };
    state.value = { kind: 'opening', footage, before, hashed: null };
    let replaced = false;
    try {
      await crew.ready();
      const info = await openHere(files, reading);
      replaced = true;
      const timestamps = await crew.film.timestamps();
      let hashing = true;
      const sha256 =
        expected === null
          ? null
          : await hash((hashed) => {
              // The last word of progress may come after the hash itself.
              if (hashing && mine === turn)
                state.value = { kind: 'opening', footage, before, hashed };
            });
      hashing = false;
      if (expected !== null && sha256 !== null && sha256 !== expected.sha256) {
        throw new FootageMismatch(expected.sha256, sha256, expected, footage);
      }
      if (mine !== turn) return null;
      const opened = { info, timestamps, files, reading, sha256 };
      state.value = { kind: 'open', film: opened };
      return opened;
    } catch (error) {
      if (mine !== turn) return null;
      if (replaced && before !== null) await backTo(before);
      state.value = before === null ? { kind: 'none' } : { kind: 'open', film: before };
      throw error;
    }
  };

  return {
    state,
    film,
    open,
    /** The open film, where there must be one. */
    opened(): OpenFilm {
      if (film.value !== null) return film.value;
      throw new ExitframeError('noFootage', 'No footage is open.', 'Open a clip first.');
    },
    /** The open film's sound, decoded once. */
    audio(): Promise<AudioTrack | null> {
      const { files } = this.opened();
      if (sound?.files !== files) sound = { files, track: crew.film.audio() };
      return sound.track;
    },
    /** The open film's hash, worked out once; `onShare` is told how much of it is, 0..1. */
    async identify(onShare: (share: number) => void = () => {}): Promise<string | null> {
      const asked = film.value;
      if (asked === null || asked.sha256 !== null) return asked?.sha256 ?? null;
      const { sha256: working, share } = identifyFiles(asked.files);
      const stop = share.subscribe(onShare);
      try {
        const sha256 = await working;
        const now = film.value;
        if (now?.files !== asked.files) return null;
        if (now.sha256 === null) state.value = { kind: 'open', film: { ...now, sha256 } };
        return sha256;
      } finally {
        stop();
      }
    },
    /**
     * Waits for threads that have the film open: where they died, others are brought up and open it again. Throws what
     * keeps them from it.
     */
    async ready() {
      await crew.ready();
      const now = film.value;
      if (now !== null && openIn !== crew.generation()) await openHere(now.files, now.reading);
    },
  };
}
