/** What a result says, in sentences. */
export const statement = {
  detail:
    "Speed of the ball's centre along the flight as it crosses the muzzle plane; interval {interval}, standard uncertainty {u}{known, select, yes {, {dof} effective degrees of freedom} other {}}.",
  lead: "The seal opened <strong>{lead}</strong> {order, select, before {before} other {after}} the ball's centre left.",
  sealOpenedAt: 'Seal opened at',
  centreLeftAt: 'Centre left at',
  leadingPoint: 'Leading point at the seal',
  fromOpening: '{time} {order, select, after {after} other {before}} the seal opened',
  notFound: 'not found',
  noVelocity: 'No exit velocity can be stated: {reason}',
  noLead: 'How long before the ball the seal opened cannot be stated: {reason}',
  warnings:
    'The measurement carries {count, plural, one {a warning} other {# warnings}} that should be quoted with it.',
  quoted:
    "The ball's centre left the muzzle at {value}, with a standard uncertainty of {u}; the interval from {low} to {high} holds the true speed with a probability of {coverage}{known, select, yes { ({dof} effective degrees of freedom)} other {}}.",
  quotedLead:
    "The muzzle seal opened {lead} {order, select, before {before} other {after}} the ball's centre left, with a standard uncertainty of {u}{open, select, yes {; within its {coverage} interval it may have opened before or after.} other { ({coverage} interval {low} to {high}).}}",
  found:
    "Found from the ball's centre in {used} frames of high-speed film; uncertainties after JCGM 100{checked, select, yes {, checked by Monte Carlo (JCGM 101)} other {}}.",
} as const;

/** What else the film tells. */
export const findings = {
  reading: '<strong>{value}</strong> ({coverage})',
  flight: 'Direction, energy, acceleration',
  elevation: 'Direction at the exit',
  elevationIs:
    "<strong>{value}</strong> ({coverage}){way, select, level {: level with the picture's rows within what is known} up {: upwards from the picture's rows} other {: downwards}}",
  kineticEnergy: 'Kinetic energy at the exit',
  momentum: 'Momentum at the exit',
  boreAcceleration: 'Mean acceleration in the bore',
  boreAccelerationIs:
    '<strong>{value}</strong> ({coverage}) over the last three ball diameters of the bore',
  deceleration: 'Deceleration after the exit',
  dragCoefficient: 'Drag coefficient it implies',
  target: 'At the target',
  targetTime: 'At the target at',
  targetSpeed: 'Speed at the target',
  targetSpeedAfter: 'Speed past the target',
  targetEnergy: 'Energy given up to the target',
  streak: 'Speed from the blur alone',
  streakIs:
    'The blur alone gives <strong>{speed}</strong> ({coverage}, {frames, plural, one {# frame} other {# frames}}). {agrees, select, yes {It agrees with the fit: {apart} {slower, select, yes {slower} other {faster}} over the same frames.} other {<alarm>It does not agree with the fit: {apart} {slower, select, yes {slower} other {faster}} over the same frames. Check the exposure and the recording rate.</alarm>}}',
  spin: 'Rotation',
  spinIs:
    '<strong>{rate}</strong> ({coverage}): {turns} turns a second, {way, select, clockwise {clockwise} other {anticlockwise}} as seen.',
  shake: 'Shake',
  noDetail: 'The still scene holds too little detail to tell whether camera or launcher moved.',
  still: 'The scene stood still within {within} px.',
  moved:
    'The scene moved by {rms} px (root mean square), at most {most} px, each known to {u} px; it was taken off the positions.',
  rivals: 'Not the ball',
  rival: 'Seen in {frames, plural, one {# frame} other {# frames}}: {reason}',
  sound: 'Sound',
  burstHeard: 'Burst heard',
  impactHeard: 'Impact on the backstop heard',
  meanSpeed: 'Mean speed to the backstop',
  againstFilm:
    '{verdict, select, no {<alarm>It does not agree with the film: heard {apart} {early, select, yes {before} other {after}} the burst seen on the film ({coverage}). Check the offset between sound and picture and the distance of the microphone.</alarm>} yes {It agrees with the film: heard {apart} {early, select, yes {before} other {after}} the burst seen on the film ({coverage}).} other {Heard {apart} {early, select, yes {before} other {after}} the burst seen on the film ({coverage}).}}',
  drive:
    'For comparison: in a perfect vacuum the air outside would push with about {force} N: {acceleration} m/s² at first, {gravities} g. The air column behind the ball must be accelerated too.',
} as const;

/** How well the curve fits. */
export const fit = {
  chiSquare: 'Chi-square {chiSquare} for {dof} degrees of freedom.',
  downWeighted:
    '{count, plural, one {# centre lies so far off that it counts} other {# centres lie so far off that they count}} for less than half.',
  monteCarlo:
    'Monte Carlo, {trials} trials: {value}, interval {interval}; {agrees, select, yes {agrees with the budget.} other {does not agree with the budget, so its interval is the one stated.}}',
} as const;
