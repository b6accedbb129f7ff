import type { Catalogue } from '../catalogue';
import { fields } from './fields';
import { models } from './models';
import { notebook } from './notebook';
import { panels } from './panels';
import { plan } from './plan';
import { queue } from './queue';
import { reasons } from './reasons';
import { result } from './result';
import { shell } from './shell';

export const french: Catalogue = {
  texts: { fields, models, notebook, panels, plan, queue, result, shell },
  reasons,
};
