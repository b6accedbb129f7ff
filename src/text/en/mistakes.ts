export const mistakes = {
  title: 'Usual mistakes, and how large they are',
  what: 'One shot of Launcher B, rendered by this project’s own renderer: no real shot. Each mistake was made on purpose and the film reduced twice by this tool, once right, once wrong. Its size is what came out; beside it stands what a formula expects. Values stand with twice their standard uncertainty.',
  back: 'Back to the shot',
  right: 'Right',
  wrong: 'Wrong',
  size: 'Size of the error',
  found: 'found: {size}',
  expected: 'by formula: {size}',
  avoid: 'How to avoid it.',
  rendered: 'rendered',
  formula: 'Formula',
  truth: 'True',
  framesUsed: '{frames, plural, one {# frame used} other {# frames used}}',
  withSpeed: 'speed {speed}',
  warned: 'With the mistake this tool warned:',
  notWarned: 'With the mistake this tool gave no warning.',
  blurLimit:
    'The formula takes pixel noise alone, the least it can be. What is stated grows more: a smeared edge also tells less of how the ball is lit and how long its streak is.',
  source: 'Formula derived here; no other source.',
  lines: { muzzle: 'muzzle plane', mark: 'mark taken for it' },
  header: 'Mistakes',
  quantity: {
    speed: 'Exit velocity',
    exitTime: 'Moment of exit',
    centreU: 'Uncertainty of a centre',
  },
  list: 'On this page',
  wrongRate: {
    title: 'Wrong recording rate',
    what: 'The film was taken at {rate}, but {typed} was typed: a setting of another day. The pictures are the same; only the time between them is wrong. The playback rate in the file, often 30 frames/s, would make the speed hundreds of times too small.',
    avoid:
      'Write the rate down with every shot. Film a flickering lamp or a timer now and then, and hold the rate against it (Clock, check of the rate).',
    formula: 'typed rate / real rate − 1',
    both: 'Every third frame of the shot in one picture. Right, the balls are 0.25 ms apart; with the wrong rate, 0.30 ms.',
  },
  lostFrames: {
    title: 'Lost frames',
    what: 'One frame after frame {after} was not recorded. The ball jumps: it goes two steps in what counts as one.',
    avoid:
      'Look for a step in the streak image and state what is lost (Clock, lost frames). Read the camera’s own count of frames, and copy files, not screens.',
    formula:
      '6 · n₁ · n₂ · k / (N · (N² − 1)), k frames lost between the first n₁ and the last n₂ of N centres',
    right: 'Every third frame of the whole film.',
    wrong: 'The same with one frame lost: one gap is wider.',
  },
  wrongPlane: {
    title: 'Scale on the wrong plane',
    what: 'The scale bar lies {depth} behind the flight, seen from {distance}, and is taken as if it lay in its plane. It looks smaller, so a pixel seems to be more metres than it is.',
    avoid:
      'Put the bar where the ball flies. Where that cannot be, measure its depth and the camera’s distance and type both; move the camera back and zoom in.',
    formula: 'depth / camera distance',
    right: 'The bar in the plane of the flight.',
    wrong: 'The same bar behind it.',
  },
  parallax: {
    title: 'Parallax',
    what: 'A mark {depth} behind the flight, level with the muzzle, is taken for the muzzle plane. The camera, {distance} away, looks at it aslant, so it is seen nearer to the middle of the picture. The speed stays as it is; the moment of exit, and the lead with it, does not.',
    avoid:
      'Mark the muzzle on the tube’s own end, at the height of the bore. Put the camera straight before the muzzle if the moment of exit matters most.',
    formula: 'aside × depth / (camera distance + depth) / speed',
    right: 'The mark in the plane of the flight stands below the muzzle.',
    wrong: 'The same mark behind it is seen elsewhere.',
  },
  rollingShutter: {
    title: 'Rolling shutter',
    what: 'A phone reads its picture line after line, {lineTime} each, here against the flight. Treated as if all lines were taken at once, the speed is wrong: from frame to frame the ball has gone on to lines that are read earlier.',
    avoid:
      'Measure the time per line from a flickering lamp and state it (Clock, rolling shutter), or turn the phone so that lines are read across the flight.',
    formula: '1 / (1 + speed × time per line / scale) − 1; along the flight with − in place of +',
    right: 'All lines at once: every third frame.',
    wrong: 'Line after line, at the same moments: the balls stand closer.',
  },
  blur: {
    title: 'Motion blur',
    what: 'The exposure is {long} instead of {short}: more light, but the ball is drawn out along the flight. Its middle stays where it was, so the speed is not shifted; but each centre is known less well.',
    avoid:
      'Let the ball move no more than a tenth of its diameter while the shutter is open, and get the light from lamps.',
    formula: 'root of the squared slope of a sharp edge over that of a smeared one',
    right: 'Short exposure.',
    wrong: 'Long exposure.',
  },
} as const;
