import type { Catalogue } from '../catalogue';
import { fields } from './fields';
import { panels } from './panels';
import { reasons } from './reasons';
import { shell } from './shell';

export const french: Catalogue = { texts: { fields, panels, shell }, reasons };
