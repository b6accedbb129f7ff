/**
 * What is commonly asked of anyone near such a launcher (common practice, no source). Local rules and the
 * person in charge come first.
 */
export const CAUTIONS: readonly string[] = [
  'An evacuated tube can fire by itself: nobody stands in line with either end until it is vented.',
  'Impact-rated eye protection for everyone in the room, from before the pump starts; hearing protection too.',
  'The ball ends in a closed, soft-lined catcher; fragments of ball and target fly sideways.',
  'The tube stands the full outside pressure with margin and is checked for cracks; clear tubes are wrapped, glass is not used.',
  'The mount is fixed, the film is punctured from a distance, and a vent valve can stand the shot down.',
  'Count people in, call the shot, and confirm outside pressure in the tube before going near.',
];

export const CAUTIONS_DEFER =
  'Local rules and a qualified person supervising the shot decide; this list replaces neither.';

/** Stands beside every prediction. */
export const PREDICTIONS_CAUTION =
  'Predictions are for study only: they are no reason to call a launcher safe, and none to change one. Local rules and a qualified person supervising the shot come first.';
