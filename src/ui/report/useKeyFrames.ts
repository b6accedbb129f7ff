import { useEffect, useState } from 'preact/hooks';
import { keyFramesOf } from '../../app/keyFrames';
import type { Reduction, Shot } from '../../app/resultTypes';
import { type Reason, reasonOf } from '../../core/reason';
import { useDesk } from '../desk';
import type { LoadedFrame } from './KeyFrames';

export type KeyFrameState =
  | { readonly kind: 'loading' }
  | { readonly kind: 'ready'; readonly frames: readonly LoadedFrame[] }
  | { readonly kind: 'failed'; readonly reason: Reason };

const LOADING: KeyFrameState = { kind: 'loading' };

/** The frames at burst and exit with their pixels, as they come from the film. */
export function useKeyFrames(shot: Shot, { result }: Reduction): KeyFrameState {
  const { session } = useDesk();
  const clock = session.readings.clock.value;
  const frameCount = session.films.film.value?.info.frameCount ?? 0;
  const [state, setState] = useState<KeyFrameState>(LOADING);
  useEffect(() => {
    let wanted = true;
    const tell = (now: KeyFrameState) => {
      if (wanted) setState(now);
    };
    tell(LOADING);
    const keyed = keyFramesOf(result, shot, clock?.ok ? clock.value : null, frameCount);
    Promise.all(
      keyed.map(async (one) => ({ ...one, picture: await session.frame(one.frame) })),
    ).then(
      (frames) => tell({ kind: 'ready', frames }),
      (error: unknown) => tell({ kind: 'failed', reason: reasonOf(error) }),
    );
    return () => {
      wanted = false;
    };
  }, [session, result, shot, clock, frameCount]);
  return state;
}
