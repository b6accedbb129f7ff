/** Clock and readout measured from film. */
export const rateCheck = {
  title: 'Check the rate against the film',
  timer: 'A timer in the picture',
  first: 'First reading: {frame, select, none {this frame} other {frame {frame}}}',
  second: 'Second reading: {frame, select, none {this frame} other {frame {frame}}}',
  elapsed: 'Time passed on the timer',
  readingU: '± u of one reading',
  workOut: 'Work out the rate',
  lamp: 'A lamp that flickers with the mains',
  mains: 'Mains frequency',
  look: 'Look for the flicker',
  reading: 'Reading frames',
  gives: 'The film gives {rate}',
  agrees: 'The film gives {rate}, which agrees with the stated rate.',
  apart: 'The film gives {rate}, {number} standard uncertainties from the stated rate.',
  use: 'Use this rate',
} as const;

export const lamp = {
  title: 'Measure it from a lamp',
  how: 'Film a lamp on the mains, or an evenly lit wall, with the settings of the shot and a short exposure. The lamp flickers twice in each period of the mains; a rolling shutter turns that into bands across the lines, which drift from frame to frame.',
  clock: 'Time in that clip comes from',
  recordingRate: 'The recording rate stated above',
  containerTimestamps: 'Time stamps in its file',
  direction: 'Direction of readout',
  notKnown: 'not known',
  directionHint: 'Taken only where the clip shows it as well either way.',
  lacksRate: 'No recording rate is stated above. State it, or take the time stamps.',
  file: 'Clip of a lamp',
  choose: 'Choose the clip of the lamp…',
  doing: 'Reading the lamp',
  inFile: '{name}: {said}',
  seen: '{frames} frames of {name}; the flicker is {percent} % of the light.',
  use: 'Use this line time',
  useGlobal: 'Use a global shutter',
  offFrequency:
    "By the clip's clock the lamp flickers {rate}, which is not twice the mains frequency.",
  offFrequencyRemedy: "Check the mains frequency and where the clip's time comes from.",
  otherSize:
    'The lamp was filmed at {width} by {height} pixels, the shot at {filmWidth} by {filmHeight}; many cameras read lines at another pace then.',
  otherSizeRemedy: 'Film the lamp with the settings of the shot.',
  notRolling: 'The shutter is not seen to roll: a line takes {time}, as with a global shutter.',
  rolls:
    'Lines are read {direction}{assumed, select, yes {, a direction the clip leaves open and you stated} other {}}, {time} each: {whole} for all {lines}.',
} as const;
