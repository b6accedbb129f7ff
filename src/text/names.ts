import { codecName } from '../core/codecs';
import { english } from './en';
import { t } from './text';

/** Whether a tree of texts has one of this name. */
export const isIn = <Tree extends object>(tree: Tree, name: string): name is keyof Tree & string =>
  Object.hasOwn(tree, name);

const ADDITIONS: Readonly<Record<string, keyof typeof english.report.tables.models.addition>> = {
  'drag bounded': 'dragBounded',
  'muzzle zone': 'muzzleZone',
};

/** A model's name as a result states it, its additions kept: 'constant acceleration, drag bounded'. */
export function modelWords(model: string): string {
  const [motion = model, ...additions] = model.split(', ');
  return additions.reduce(
    (words, name) => {
      const known = ADDITIONS[name];
      const addition = known === undefined ? name : t(`report.tables.models.addition.${known}`);
      return t('report.tables.models.with', { model: words, addition });
    },
    isIn(english.panels.result.model, motion) ? t(`panels.result.model.${motion}`) : motion,
  );
}

const BETWEEN = /^Burst between frames (\d+) and (\d+)$/;

/** A source of uncertainty by the name a result gives it; one that is not known keeps it. */
export function sourceWords(source: string): string {
  if (isIn(english.report.sources, source)) return t(`report.sources.${source}`);
  const [, from, to] = BETWEEN.exec(source) ?? [];
  return from === undefined || to === undefined ? source : t('report.betweenFrames', { from, to });
}

/** Codecs that are none: their names are words. */
const UNCODED: Readonly<Record<string, 'video' | 'grey'>> = {
  rawvideo: 'video',
  'uncompressed grey': 'grey',
};

/** A codec as people call it; short names are abbreviations. */
export function codecWords(codec: string): string {
  const uncoded = UNCODED[codec];
  if (uncoded !== undefined) return t(`panels.footage.uncoded.${uncoded}`);
  return abbreviated(codecName(codec));
}

/** What footage is packed in, by the name that opening it gives. */
export function containerWords(container: string): string {
  if (container === 'image sequence') return t('panels.footage.packed.images');
  if (container === 'zip of images') return t('panels.footage.packed.zip');
  const [inside = container, zip] = container.split(' in ');
  const name = abbreviated(inside);
  return zip === undefined ? name : t('panels.footage.packed.inZip', { container: name });
}

const abbreviated = (name: string) => (name.length <= 4 ? name.toUpperCase() : name);
