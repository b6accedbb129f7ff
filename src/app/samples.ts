import { ExitframeError } from '../core/reason';
import type { FootageFile } from '../footage/source';
import { validateShot } from '../shot/parse';
import type { Shot } from '../shot/schema';
import { footagePaths } from './draft';

/** A rendered clip that comes with the tool. */
export interface Sample {
  /** Name of its folder: 'a-clean'. */
  readonly id: string;
  readonly shot: Shot;
  readonly urls: readonly string[];
}

export const FIRST_SAMPLE = 'a-clean';

const shots = import.meta.glob<unknown>('../../sample-clips/*/*.shot.json', {
  eager: true,
  import: 'default',
});
const media = import.meta.glob<string>(
  '../../sample-clips/*/**/*.{mp4,mov,webm,mkv,avi,gif,png,tif,tiff,bmp}',
  { eager: true, query: '?url', import: 'default' },
);

/** The samples in the order of their names; one whose footage is not there is left out. */
export const SAMPLES: readonly Sample[] = Object.entries(shots)
  .flatMap(([path, data]) => {
    const folder = path.slice(0, path.lastIndexOf('/'));
    const outcome = validateShot(data);
    if (!outcome.ok) return [];
    const urls = footagePaths(outcome.value.footage).map((name) => media[`${folder}/${name}`]);
    const found = urls.filter((url) => url !== undefined);
    if (found.length < urls.length) return [];
    const id = folder.slice(folder.lastIndexOf('/') + 1);
    return [{ id, shot: outcome.value, urls: found }];
  })
  .sort((a, b) => a.id.localeCompare(b.id));

/** Fetches a sample's footage from where the page came from. */
export async function fetchSample(sample: Sample): Promise<FootageFile[]> {
  const names = footagePaths(sample.shot.footage);
  return Promise.all(
    sample.urls.map(async (url, i) => {
      const name = (names[i] ?? sample.id).split('/').at(-1) ?? sample.id;
      const response = await fetch(url).catch(() => null);
      if (!response?.ok) {
        throw new ExitframeError(
          'sampleNotFetched',
          `The sample clip ${name} could not be fetched.`,
          'Check that the tool is still being served, then open it again.',
        );
      }
      return { name, blob: await response.blob() };
    }),
  );
}
