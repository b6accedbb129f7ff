/** Stands beside every prediction. */
export const PREDICTIONS_CAUTION =
  'Predictions are for study only: they are no reason to call a launcher safe, and none to change one. Local rules and a qualified person supervising the shot come first.';
