import type { Reduction } from '../../app/resultTypes';

/** Position, residuals, speed and the seal's bulge against time. */
export function ResultPlots(_props: { readonly reduction: Reduction }) {
  return null;
}
