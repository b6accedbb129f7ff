import type { AudioTrack } from './film';
import { reasonOf } from './reason';

/** A film's sound; null as well where no decoder reads it: the film is of use without. */
export async function soundIfDecodable(
  read: () => Promise<AudioTrack | null>,
): Promise<AudioTrack | null> {
  try {
    return await read();
  } catch (error) {
    if (reasonOf(error).code === 'soundUndecodable') return null;
    throw error;
  }
}
