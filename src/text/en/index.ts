import { fields } from './fields';
import { film } from './film';
import { frames } from './frames';
import { panels } from './panels';
import { shell } from './shell';
import { stage } from './stage';
import { streak } from './streak';

export const english = { fields, film, frames, panels, shell, stage, streak } as const;
