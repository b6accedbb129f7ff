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

/** Whether a shot's notes say that it comes from the renderer; wherever it is shown that is said. */
export const isRendered = (notes: string): boolean => notes.startsWith('Rendered, not filmed');

const shots = import.meta.glob<unknown>('../../sample-clips/[a-z]-*/*.shot.json', {
  eager: true,
  import: 'default',
});
const media = import.meta.glob<string>(
  '../../sample-clips/[a-z]-*/**/*.{mp4,mov,webm,mkv,avi,gif,png,tif,tiff,bmp}',
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
      return { name, blob: await fetchFile(url, name) };
    }),
  );
}

const series = import.meta.glob<string>(
  ['../../sample-clips/series/*.{shot,result}.json', '../../sample-clips/series/*.mp4'],
  { eager: true, query: '?url', import: 'default' },
);

/** Fetches the shot and result files of the rendered series, and the clips that were kept of it. */
export async function fetchSampleSeries(): Promise<File[]> {
  return Promise.all(
    Object.entries(series).map(async ([path, url]) => {
      const name = path.slice(path.lastIndexOf('/') + 1);
      return new File([await fetchFile(url, name)], name);
    }),
  );
}

/** Fetches a file that comes with the tool. */
export async function fetchFile(url: string, name: string): Promise<Blob> {
  const response = await fetch(url).catch(() => null);
  if (!response?.ok) {
    throw new ExitframeError(
      'sampleNotFetched',
      `The sample file ${name} could not be fetched.`,
      'Check that the tool is still being served, then open it again.',
      { values: { name } },
    );
  }
  return response.blob();
}
