import { describe, expect, it } from 'vitest';
import { createFilmShelf } from '../../../src/app/filmShelf';
import { groupsOf, mixedBy, rowsOf } from '../../../src/app/notebookTable';
import { entryOf } from '../../../src/series/entry';
import { exampleSeries } from '../../fixtures/series';

const entries = exampleSeries(12).map(({ shot, result }, i) =>
  entryOf(shot, i === 4 ? null : result, `shot ${i + 1}`),
);
const names = (some: readonly { readonly name: string }[]) => some.map(({ name }) => name);

describe('rows of the notebook', () => {
  it('are in the order of numbers in their names', () => {
    expect(names(rowsOf(entries, '', { key: 'name', upwards: true }))).toEqual(names(entries));
    expect(names(rowsOf(entries, '', { key: 'name', upwards: false }))).toEqual(
      names(entries).reverse(),
    );
  });

  it('are sorted by a number both ways, those without one last', () => {
    for (const upwards of [true, false]) {
      const rows = rowsOf(entries, '', { key: 'exitVelocity', upwards });
      expect(rows.at(-1)?.name).toBe('shot 5');
      const speeds = rows
        .slice(0, -1)
        .map(({ exitVelocity }) => ('value' in exitVelocity ? exitVelocity.value : Number.NaN));
      const sorted = [...speeds].sort((a, b) => (upwards ? a - b : b - a));
      expect(speeds).toEqual(sorted);
    }
  });

  it('hold every word of the filter, in name or notes', () => {
    const kept = (filter: string) => rowsOf(entries, filter, { key: 'name', upwards: true });
    expect(names(kept('SECOND shot'))).toEqual([2, 4, 6, 8, 10, 12].map((i) => `shot ${i}`));
    expect(names(kept('roll 12'))).toEqual(['shot 12']);
    expect(kept('glass')).toEqual([]);
  });

  it('leave the entries as they were', () => {
    const before = names(entries);
    rowsOf(entries, '', { key: 'ballMass', upwards: false });
    expect(names(entries)).toEqual(before);
  });
});

describe('groups', () => {
  it('hold together what is stated alike', () => {
    const sizes = (grouping: Parameters<typeof groupsOf>[1]) =>
      groupsOf(entries, grouping).map(({ mark, entries: some }) => [mark.stated, some.length]);
    expect(sizes('none')).toEqual([[[], 12]]);
    expect(sizes('barrelLength')).toEqual([
      [[0.8], 4],
      [[1.1], 4],
      [[1.4], 4],
    ]);
    expect(sizes('residualPressure')).toEqual([
      [[5], 6],
      [[10], 3],
      [[30], 3],
    ]);
    expect(sizes('ball')).toEqual([[[30, 1.9], 12]]);
  });

  it('tell what else their shots differ by', () => {
    expect(mixedBy(groupsOf(entries, 'none'))).toEqual(['residualPressure', 'barrelLength']);
    expect(mixedBy(groupsOf(entries.slice(0, 1), 'none'))).toEqual([]);
    const alike = entries.map((one) => ({
      ...one,
      conditions: entries[0]?.conditions ?? one.conditions,
    }));
    expect(mixedBy(groupsOf(alike, 'none'))).toEqual([]);
  });

  it('keep apart what states nothing', () => {
    const [first] = entries;
    if (first === undefined) throw new Error('no entry');
    const bare = { ...first, conditions: { ...first.conditions, barrelLength: null } };
    expect(groupsOf([first, bare], 'barrelLength').map(({ mark }) => mark.stated)).toEqual([
      [0.8],
      null,
    ]);
  });
});

describe('films beside the shots', () => {
  const file = (path: string) => {
    const made = new File(['film'], path.split('/').at(-1) ?? path);
    Object.defineProperty(made, 'webkitRelativePath', { value: path });
    return made;
  };

  it('are found in the folder of their shot, or anywhere by a name that is the only one', () => {
    const shelf = createFilmShelf();
    const [a, b, lone] = [file('x/a/clip.mp4'), file('x/b/clip.mp4'), file('x/lone.mp4')];
    shelf.keep([a, b, lone]);
    shelf.place('A', 'x/a/shot.shot.json');
    shelf.place('B', 'x/b/shot.shot.json');
    expect(shelf.find('A', ['clip.mp4'])).toEqual([a]);
    expect(shelf.find('B', ['clip.mp4'])).toEqual([b]);
    expect(shelf.find('C', ['clip.mp4'])).toEqual([]);
    expect(shelf.find('C', ['lone.mp4'])).toEqual([lone]);
    // Chosen once more it is still one film.
    shelf.keep([file('x/lone.mp4')]);
    expect(shelf.find('C', ['lone.mp4'])).toHaveLength(1);
  });

  it('of a sequence are all there, or none', () => {
    const shelf = createFilmShelf();
    shelf.keep([file('x/frames/1.png')]);
    shelf.place('A', 'x/shot.shot.json');
    expect(shelf.find('A', ['frames/1.png'])).toHaveLength(1);
    expect(shelf.find('A', ['frames/1.png', 'frames/2.png'])).toEqual([]);
  });
});
