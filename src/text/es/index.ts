import type { Catalogue } from '../catalogue';
import { edits } from './edits';
import { explain } from './explain';
import { fields } from './fields';
import { film } from './film';
import { frames } from './frames';
import { mistakes } from './mistakes';
import { models } from './models';
import { notebook } from './notebook';
import { panels } from './panels';
import { plan } from './plan';
import { plots } from './plots';
import { queue } from './queue';
import { reading } from './reading';
import { reasons } from './reasons';
import { report } from './report';
import { result } from './result';
import { shell } from './shell';
import { stage } from './stage';
import { streak } from './streak';

export const spanish: Catalogue = {
  texts: {
    edits,
    explain,
    fields,
    film,
    frames,
    mistakes,
    models,
    notebook,
    panels,
    plan,
    plots,
    queue,
    reading,
    report,
    result,
    shell,
    stage,
    streak,
  },
  reasons,
};
