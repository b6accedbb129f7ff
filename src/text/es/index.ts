import type { Catalogue } from '../catalogue';
import { fields } from './fields';
import { film } from './film';
import { frames } from './frames';
import { panels } from './panels';
import { reasons } from './reasons';
import { shell } from './shell';
import { stage } from './stage';
import { streak } from './streak';

export const spanish: Catalogue = {
  texts: { fields, film, frames, panels, shell, stage, streak },
  reasons,
};
