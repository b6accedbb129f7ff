import type { English, SameShape } from '../catalogue';

export const fields: SameShape<English['fields']> = {
  u: '± u',
};
