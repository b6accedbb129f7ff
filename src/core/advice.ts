/**
 * What makes each input better known, by its name in a budget: in files as it stands, on the page in English. Values
 * stand in braces.
 */
export const ADVICE = {
  line: '{remedy}; were this input known exactly, the uncertainty would be {smaller} smaller.',
  unknown: 'Find out more about this input ({source})',
  remedy: {
    'known length': 'Use a scale whose length is known better: an engraved bar rather than a tape',
    'ends of the known length':
      'Use a longer known length, or one with finer marks, and set its ends on an enlarged picture',
    'depth of the known length':
      'Bring the scale to the flight line, measure more closely how far off it stands, or film from farther away',
    'camera distance':
      'Bring the scale to the flight line, or measure from the lens to the flight line more closely',
    'lens distortion':
      'Calibrate the lens from more pictures that reach into the corners, or keep the flight near the middle of the picture',
    'lens centre':
      'Calibrate the lens from more pictures that reach into the corners, or keep the flight near the middle of the picture',
    'focal length': 'Calibrate the lens at the very zoom and focus of the film, from more pictures',
    'corners of the plane': 'Mark a larger rectangle, its corners set on an enlarged picture',
    'size of the plane': 'Measure the width and height of the marked rectangle more closely',
    'depth of the plane':
      'Bring the marked rectangle to the flight line, or measure how far from it it stands',
    'direction of the flight': 'Follow the ball over a longer stretch',
    'recording rate': "Measure the camera's true rate with a lamp or timer of known frequency",
    "the file's time stamps":
      'Film a lamp or timer of known frequency and state the recording rate found by it',
    'frame times': 'Film with a camera that keeps an even rate, or use more frames past the muzzle',
    'time per line':
      'Measure the time per line with a flickering lamp, or turn the camera so that its lines are read across the flight',
    'place of the muzzle plane': 'Mark the muzzle plane more closely, on an enlarged picture',
    'ball centres':
      'Get more frames past the muzzle by a higher rate or a wider view, or sharper centres by more light and a closer camera',
    'air drag as filmed': 'Film a longer stretch of the flight, on which the ball slows visibly',
    'air drag as expected': 'Film a longer stretch of the flight, on which the ball slows visibly',
    'loss in the muzzle zone as filmed':
      'Get more frames, or sharper centres, within three ball diameters of the muzzle and just beyond',
    'loss in the muzzle zone as expected':
      'Begin the view at the muzzle and film well beyond three ball diameters, so that the loss there is seen and not assumed',
    'shape of the muzzle zone':
      'Begin the view at the muzzle and film well beyond three ball diameters, so that the loss there is seen and not assumed',
    'choice of model':
      'Film a longer stretch of the flight with more frames, which tells the models apart',
    'refraction in the wall of the tube':
      'Film the end of the bore squarely and from farther away, so that its wall is not looked through at a slant',
    'air drag left out': 'Let the model be chosen automatically, which counts the drag of the air',
    'ball diameter': 'Measure the ball with a caliper in several directions',
    'ball mass': 'Weigh the ball',
    'air density': 'Read thermometer and barometer beside the launcher',
    'air temperature': 'Read a thermometer beside the launcher',
    'air pressure': 'Read a barometer at the height of the launcher, not reduced to sea level',
    'air humidity': 'Read a hygrometer beside the launcher',
  },
} as const;
