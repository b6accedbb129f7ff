import { fields } from './fields';
import { models } from './models';
import { notebook } from './notebook';
import { panels } from './panels';
import { plan } from './plan';
import { queue } from './queue';
import { result } from './result';
import { shell } from './shell';

export const english = { fields, models, notebook, panels, plan, queue, result, shell } as const;
