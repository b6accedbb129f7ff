import { expect, it } from 'vitest';
import { clipsAmong } from '../../../src/app/footageFiles';
import { namesOf } from '../../../src/app/queueNames';

const file = (path: string) => {
  const made = new File(['x'], path.replace(/^.*\//, ''));
  return path.includes('/')
    ? Object.defineProperty(made, 'webkitRelativePath', { value: path })
    : made;
};
const clipsOf = (...paths: string[]) => clipsAmong(paths.map(file));
const pathsOf = (clips: readonly (readonly File[])[]) =>
  clips.map((files) => files.map((one) => one.webkitRelativePath || one.name));

it('takes every film for a clip and the images of a folder for one, in the order of their numbers', () => {
  const clips = clipsOf(
    'day/c10.mp4',
    'day/c9.mov',
    'day/seq/f-10.png',
    'day/seq/f-9.png',
    'day/c9.shot.json',
    'day/notes.txt',
    'day/.hidden',
    'other/f-1.tif',
  );
  expect(pathsOf(clips)).toEqual([
    ['day/c9.mov'],
    ['day/c10.mp4'],
    ['day/seq/f-9.png', 'day/seq/f-10.png'],
    ['other/f-1.tif'],
  ]);
});

it('finds none among what is no footage', () => {
  expect(clipsOf('c.shot.json', 'table.csv', 'bench.setup.json')).toEqual([]);
});

it('gives each clip a name that no other has', () => {
  const clips = clipsOf('a/clip.mp4', 'b/clip.mp4', 'b/seq/1.png', 'b/seq/2.png');
  expect(namesOf(clips, [])).toEqual(['clip', 'b clip', 'seq']);
  expect(namesOf(clips, ['clip', 'b clip', 'seq'])).toEqual(['a clip', 'b clip 2', 'seq 2']);
  expect(namesOf(clipsOf('clip.mp4', 'clip.mov'), [])).toEqual(['clip', 'clip 2']);
});
