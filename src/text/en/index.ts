import { fields } from './fields';
import { panels } from './panels';
import { shell } from './shell';

export const english = { fields, panels, shell } as const;
