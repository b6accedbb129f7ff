import type { Advice, BudgetEntry } from '../shot/result';

const LENS =
  'Calibrate the lens from more pictures that reach into the corners, or keep the flight near the middle of the picture';
const DRAG = 'Film a longer stretch of the flight, on which the ball slows visibly';
const MUZZLE_ZONE =
  'Begin the view at the muzzle and film well beyond three ball diameters, so that the loss there is seen and not assumed';

/** What makes each input of the exit velocity better known. */
const REMEDIES: ReadonlyMap<string, string> = new Map([
  ['known length', 'Use a scale whose length is known better: an engraved bar rather than a tape'],
  [
    'ends of the known length',
    'Use a longer known length, or one with finer marks, and set its ends on an enlarged picture',
  ],
  [
    'depth of the known length',
    'Bring the scale to the flight line, measure more closely how far off it stands, or film from farther away',
  ],
  [
    'camera distance',
    'Bring the scale to the flight line, or measure from the lens to the flight line more closely',
  ],
  ['lens distortion', LENS],
  ['lens centre', LENS],
  ['focal length', 'Calibrate the lens at the very zoom and focus of the film, from more pictures'],
  ['corners of the plane', 'Mark a larger rectangle, its corners set on an enlarged picture'],
  ['size of the plane', 'Measure the width and height of the marked rectangle more closely'],
  [
    'depth of the plane',
    'Bring the marked rectangle to the flight line, or measure how far from it it stands',
  ],
  ['direction of the flight', 'Follow the ball over a longer stretch'],
  ['recording rate', "Measure the camera's true rate with a lamp or timer of known frequency"],
  [
    "the file's time stamps",
    'Film a lamp or timer of known frequency and state the recording rate found by it',
  ],
  ['frame times', 'Film with a camera that keeps an even rate, or use more frames past the muzzle'],
  [
    'time per line',
    'Measure the time per line with a flickering lamp, or turn the camera so that its lines are read across the flight',
  ],
  ['place of the muzzle plane', 'Mark the muzzle plane more closely, on an enlarged picture'],
  [
    'ball centres',
    'Get more frames past the muzzle by a higher rate or a wider view, or sharper centres by more light and a closer camera',
  ],
  ['air drag as filmed', DRAG],
  ['air drag as expected', DRAG],
  [
    'loss in the muzzle zone as filmed',
    'Get more frames, or sharper centres, within three ball diameters of the muzzle and just beyond',
  ],
  ['loss in the muzzle zone as expected', MUZZLE_ZONE],
  ['shape of the muzzle zone', MUZZLE_ZONE],
  [
    'choice of model',
    'Film a longer stretch of the flight with more frames, which tells the models apart',
  ],
  [
    'refraction in the wall of the tube',
    'Film the end of the bore squarely and from farther away, so that its wall is not looked through at a slant',
  ],
  ['air drag left out', 'Let the model be chosen automatically, which counts the drag of the air'],
  ['ball diameter', 'Measure the ball with a caliper in several directions'],
  ['ball mass', 'Weigh the ball'],
  ['air density', 'Read thermometer and barometer beside the launcher'],
  ['air temperature', 'Read a thermometer beside the launcher'],
  ['air pressure', 'Read a barometer at the height of the launcher, not reduced to sea level'],
  ['air humidity', 'Read a hygrometer beside the launcher'],
]);

const MOST_LINES = 3;
/** An input with a smaller share of the variance is not worth the work: without it u falls by less than 5 %. */
const SMALLEST_SHARE = 0.1;

/**
 * What would help a result most: the inputs with the largest shares of its variance, largest first. Entries of one
 * name are one input, their contributions added in quadrature.
 */
export function adviceOf(entries: readonly BudgetEntry[]): Advice[] {
  const variances = new Map<string, number>();
  let total = 0;
  for (const { source, contribution } of entries) {
    variances.set(source, (variances.get(source) ?? 0) + contribution ** 2);
    total += contribution ** 2;
  }
  return [...variances]
    .map(([source, variance]) => ({ source, share: Math.min(1, variance / total) }))
    .filter(({ share }) => share >= SMALLEST_SHARE)
    .sort((a, b) => b.share - a.share)
    .slice(0, MOST_LINES)
    .map(({ source, share }) => ({ source, share, message: sentence(source, share) }));
}

function sentence(source: string, share: number): string {
  const remedy = REMEDIES.get(source) ?? `Find out more about this input (${source})`;
  const smaller = Math.round(100 * (1 - Math.sqrt(1 - share)));
  return `${remedy}; were this input known exactly, the uncertainty would be ${smaller} % smaller.`;
}
