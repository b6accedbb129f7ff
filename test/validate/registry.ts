import { blur } from './classes/blur';
import { clean } from './classes/clean';
import { compressed } from './classes/compressed';
import { hidden } from './classes/hidden';
import { clutter } from './clutter';
import { burst } from './estimate/burst';
import { images } from './estimate/images';
import { positions } from './estimate/positions';
import { sound } from './estimate/sound';
import { conservation } from './model/conservation';
import { convergence } from './model/convergence';
import { launch } from './model/launch';
import { clips } from './plan/clips';
import { streak } from './streak';
import type { ValidationClass } from './types';

/** A class and the sources its records depend on, besides those of the renders. */
export interface Registered {
  readonly validation: ValidationClass;
  readonly sources: readonly string[];
}

/** Sources of the estimator of the centre, and of those who check it. */
const CENTRE = ['src/core', 'src/image', 'test/validate'];
/** Those of a whole reduction. */
const REDUCTION = [
  ...CENTRE,
  'src/shot',
  'src/geometry',
  'src/clock',
  'src/fit',
  'src/tracking',
  'src/uncertainty',
  'src/exit',
  'src/seal',
  'src/sound',
  'src/reduction',
  'src/footage',
];

/** Those of the estimators alone, without images. */
const ESTIMATORS = ['src/core', 'src/fit', 'src/uncertainty', 'src/exit', 'test/validate/estimate'];

/** Those of the sound track alone. */
const SOUND = ['src/core', 'src/sound', 'src/uncertainty', 'test/validate'];

/** Those of the launch models. */
const MODEL = ['src/core', 'src/launch', 'test/validate/model'];

/** Records are plain data; what a class makes of them is its own affair. */
const register = <Record>(
  { name, chunks, run, conclude }: ValidationClass<Record>,
  sources: readonly string[],
): Registered => ({
  validation: {
    name,
    chunks,
    run,
    conclude: (records) => conclude(records as readonly Record[]),
  },
  sources,
});

/** The classes of each subject, in the order of the page. */
export const SUBJECTS: Readonly<Record<string, readonly Registered[]>> = {
  ball: [
    register(clean, CENTRE),
    register(blur, CENTRE),
    register(hidden, CENTRE),
    register(compressed, [...CENTRE, 'src/footage']),
    register(clutter, REDUCTION),
    register(streak, REDUCTION),
  ],
  estimate: [
    register(positions, ESTIMATORS),
    register(images, REDUCTION),
    register(burst, [...CENTRE, 'src/seal', 'src/clock', 'src/uncertainty']),
    register(sound, SOUND),
  ],
  plan: [register(clips, [...REDUCTION, 'src/plan', 'src/headless'])],
  model: [register(convergence, MODEL), register(conservation, MODEL), register(launch, MODEL)],
};
