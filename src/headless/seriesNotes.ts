import { SOFTWARE_VERSION } from '../core/version';
import { setupKey } from '../shot/setup';
import type { SeriesPart } from './series';

/** What results made by many commands leave untold that one command over all shots would have told. */
export function seriesNotes(results: readonly Pick<SeriesPart, 'software' | 'inputs'>[]): string[] {
  const versions = new Set(results.map(({ software }) => software));
  versions.delete(SOFTWARE_VERSION);
  /** By setup: shots that were held against no scene, and those that others were held against. */
  const setups = new Map<string, { free: string[]; against: Set<string> }>();
  for (const { inputs } of results) {
    const key = setupKey(inputs.shot);
    if (key === null) continue;
    const setup = setups.get(key) ?? { free: [], against: new Set() };
    setups.set(key, setup);
    if (inputs.heldAgainst === null) setup.free.push(inputs.shot.name);
    else setup.against.add(inputs.heldAgainst);
  }
  const split = [...setups.values()].filter(
    ({ free, against }) => free.length > 1 || against.size > 1,
  );
  return [
    ...[...versions].map(
      (version) => `Results of version ${version} are among them; this is ${SOFTWARE_VERSION}.`,
    ),
    ...split.map(
      ({ free, against }) =>
        `Shots of one setup were not all held against the same still scene (${[...new Set([...free, ...against])].join(', ')}), so a camera that moved between them may be untold. Reduce them with one --setup-from.`,
    ),
  ];
}
