export const explain = {
  title: 'What this step works out',
  yours: 'Your numbers',
  notYet: 'not known yet: step {step}',
  missing:
    'Where a number is still missing, its letter stands in the formula. Still missing: {list}.',
  is: '{letter}, {name}',
  mistake: 'A usual mistake',
  toMistake: 'In pictures: {title}',
  what: {
    footage:
      'The film is a row of pictures taken at even times. Everything after this step counts frames: which one shows the ball where. So no frame may be lost or doubled, and it must be the camera’s own file, not a copy slowed down or cut.',
    clock:
      'Speed is distance over time, and the film has no time of its own: it is the number of frames over the recording rate. What is wrong with the rate is wrong with every speed by the same share.',
    scale:
      'The film knows pixels, the speed needs metres. A length that is known, seen in the plane of the flight, gives the metres of one pixel. A length behind that plane looks smaller; the camera’s distance tells by how much.',
    ball: 'In each frame the ball’s centre is measured to a small part of a pixel. How far it is from the muzzle plane, along the flight, is that many pixels times the scale. While the shutter is open the ball moves on, and its picture is drawn out along the flight by the blur.',
    seal: 'The seal is open from the moment its outward bulge tears. Set against the moment the ball’s centre crosses the muzzle plane, that says which came first, and by how much.',
    result:
      'Two centres and their times already give a speed: the mean between them. Air slows the ball, so the speed at the muzzle is higher; the fit through all centres takes it back to the muzzle plane.',
    models:
      'The most that the air could give: its whole pressure on the ball along the whole barrel, with nothing before the ball, no friction and no leak. A film that says more than that has a mistake in it.',
  },
  symbol: {
    frames: 'frames of the film',
    interval: 'time between frames',
    duration: 'from the first frame to the last',
    rate: 'recording rate',
    length: 'known length',
    lengthPixels: 'its length in the film',
    depth: 'its depth behind the flight',
    cameraDistance: 'camera distance',
    oneScale: 'scale',
    perPixel: 'scale',
    centrePixels: 'centre from the muzzle plane, in the film',
    centre: 'the same in metres',
    exposure: 'exposure',
    blur: 'blur along the flight',
    exitTime: 'the centre leaves',
    burstTime: 'the seal opens',
    lead: 'lead of the seal',
    startPlace: 'centre in the first frame used',
    endPlace: 'centre in the last',
    startTime: 'time of the first',
    endTime: 'time of the last',
    meanSpeed: 'mean speed between them',
    exitVelocity: 'exit velocity',
    pressure: 'pressure of the air',
    mass: 'mass of the ball',
    barrel: 'barrel length',
    boreArea: 'cross-section of the bore',
    mostSpeed: 'the most it can be',
  },
  note: {
    footage: 'From the first frame to the last there are N − 1 intervals, not N.',
    clock: 'The rate is known to {share}: so is every speed, from this cause alone.',
    lines:
      'This camera reads its picture line after line, {line} each: the last line is {whole} later than the first.',
    plane: 'Here the marked rectangle sets the scale; the known length is held against it.',
    lengths:
      '{count} known lengths are averaged by their uncertainties; together they give {scale}.',
    ball: 'This is frame {frame}, in the middle of the frames used.',
    seal: 'Both moments share the film’s clock; their correlation is {r}.',
    result: 'Taken back to the muzzle plane by the fit: v = {speed}.',
    models: 'The film says {speed}: {share} of that.',
  },
  parts: {
    scale: 'What the scale’s uncertainty is made of. Squares add up: {u} in all.',
    result:
      'What the speed’s uncertainty is made of, largest first. Squares add up: {u} in all, as a standard uncertainty.',
    rest: 'all others together',
  },
  mistakeIn: {
    footage:
      'A frame is lost while recording or copying, and nobody notices: the ball seems to jump.',
    clock:
      'The playback rate in the file, or a setting of another day, is taken for the recording rate.',
    rolling: 'A phone reads line after line, but is treated as if it took each picture at once.',
    scale: 'The scale bar lies on the bench or the wall, not in the plane of the flight.',
    ball: 'A long exposure to get more light: the ball becomes a streak, its centre less certain.',
    seal: 'A mark on something behind the tube is taken for the muzzle: seen aslant, it is elsewhere.',
    result: 'The scale bar lay behind the flight, and the small uncertainty hides that it did.',
    models: 'A film above the most that can be is believed, when its recording rate was wrong.',
  },
} as const;
