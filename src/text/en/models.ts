export const models = {
  title: 'Models',
  caution:
    'Predictions are for study only: they are no reason to call a launcher safe, and none to change one. Local rules and a qualified person supervising the shot come first.',
  ballAndAir: 'Ball and air are stated on the Ball step; they go into the models too.',
  model: 'Model',
  cards: {
    title: 'What the models take for granted',
    source: 'Source: {source}',
    constantForce: {
      title: 'Constant force',
      assumes:
        'The pressure outside pushes on the ball however fast it goes, into a perfect vacuum. No air is set in motion, none leaks, nothing rubs, and nothing is ahead, outside the muzzle neither. Residual pressure, burst pressure and losses are not used; the seal opens when the ball touches it. It is always above what a launcher does.',
      source:
        'Textbook mechanics; given as the naive bound by Ayars and Buchholtz, Am. J. Phys. 72 (2004) 961, eq. 1 and 2.',
    },
    momentum: {
      title: 'Momentum of ball and air',
      assumes:
        'The air that follows the ball is picked up at once to its speed, at the density outside: it neither expands nor has waves. Added by their own terms: uniform air ahead squeezed without loss of heat, leak, loss at the entrance, frictions. Its ceiling, the root of pressure over density, belongs to the model and bounds nothing.',
      source: 'Ayars and Buchholtz, Am. J. Phys. 72 (2004) 961, with the terms named here added.',
    },
    gasDynamics: {
      title: 'Gas dynamics',
      assumes:
        'The Euler equations in one dimension behind and ahead of the ball, which is a piston with a leaking gap: waves and shocks are followed. A perfect gas, alike over the bore; the rear seal gone at once; the muzzle seal a wall until its burst pressure is passed, then open at once; walls that take no heat; the ball loses nothing to what is left of the seal.',
      source:
        'Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed. 2009 (method); Seigel, AGARDograph 91 (1965) (the problem; from memory).',
    },
    expansion: {
      title: 'Expansion limit',
      assumes:
        'At the ball, air expanded without loss to the ball’s speed, with no time for waves to run: what gas dynamics comes to for a heavy ball, and above it for a light one. Air ahead and leak as in the momentum model; entrance loss and wall friction are not used.',
      source:
        'Seigel, The Theory of High Speed Guns, AGARDograph 91 (1965), large chamber (from memory; algebra checked).',
    },
  },
  run: {
    stale: 'Launcher, film or coverage changed after the models were run. Predict again.',
    cancelled: 'Cancelled: not every model is done.',
    running: 'Running the models',
    predict: 'Predict',
    again: 'Predict again',
  },
  launcher: {
    title: 'Launcher',
    none: 'No launcher is stated yet. Bore and barrel length come first.',
    losses: 'Start, leak and losses',
    lossesWhat: 'Common values unless you know better; each with its own uncertainty.',
    needed: 'needed',
    closeToSeal: 'close to the seal',
    boreDiameter: 'Bore diameter',
    barrelLength: 'Barrel length, seal to seal',
    residualPressure: 'Residual pressure',
    sealBurstPressure: 'Seal burst pressure',
    startPosition: 'Start of the ball’s centre',
    gapDischarge: 'Discharge of the gap',
    entranceLoss: 'Entrance loss',
    wallFriction: 'Wall friction',
    ballFriction: 'Ball friction, N',
    hint: {
      residualPressure: 'Absolute pressure of the air left in the barrel.',
      sealBurstPressure:
        'How far the pressure inside exceeds that outside when the muzzle seal opens.',
      startPosition: 'From the rear seal. Left empty: the ball lies 1 ± 0.5 mm from it.',
      gapDischarge: 'Coefficient of the leak past the ball; 0: no leak.',
      entranceLoss: 'About 0.5 with a sharp edge, near 0 with a bell mouth.',
      wallFriction: 'Darcy’s factor: about 0.02 in a smooth tube.',
    },
  },
  view: {
    title: 'Film against model',
    stale: 'Launcher or film changed: predict again. Below is what the models said before.',
    what: 'Four models say how fast this launcher should fire and when its muzzle seal should open, each with the uncertainty that the inputs give it, beside what the film measured.',
    stateLauncher: 'State the launcher in the sheet: bore, length and its two pressures.',
  },
  comparison: {
    meaning: {
      agree: 'Film and model agree: they differ by no more than their uncertainties explain.',
      questionable:
        'Film and model may disagree: they are {zeta} standard uncertainties apart, which chance explains once in twenty shots or less.',
      differ:
        'Film and model disagree: they are {zeta} standard uncertainties apart. An input, the film or what the model leaves out is wrong.',
    },
    noSpeed: 'The film gives no exit velocity yet, so nothing is held against the models.',
    speed: 'Exit speed',
    lead: 'Lead of the muzzle seal',
    caption: '{title} ({coverage})',
    from: 'From',
    difference: 'Film minus model',
    filmAndModel: 'Film and model',
    film: 'Film',
    notMeasured: 'not measured',
    waiting: 'being worked out',
    verdict: { agree: 'agree', questionable: 'may differ', differ: 'differ' },
    what: 'ζ is the difference over its standard uncertainty: up to 2 they agree, from 3 on they differ. Eₙ is the difference over its uncertainty expanded for 95 %: beyond 1 they differ. The uncertainty of a model is that of its inputs; what it leaves out is not in it. Film and model are taken as independent.',
    en: 'Eₙ',
    ofModel: '{model}: {message}',
  },
  plots: {
    title: 'Exit speed and barrel length',
    axis: 'barrel length',
    thisShot: 'this shot',
  },
  residual: {
    title: 'What residual air costs',
    name: 'Exit speed and residual pressure',
    caption: 'Exit speed with other residual pressures, all else as stated ({coverage})',
    share: 'Of the air outside',
    pressure: 'Residual pressure',
    doesNotLeave: 'does not leave',
    pressureIs: '{number} hPa',
  },
  gap: {
    title: 'What would have to be wrong',
    byModel: 'By the model',
    waiting: 'Being worked out; the speeds come first.',
    noSpeed: 'Measure the film first: there is no speed to hold the model against.',
    doesNotLeave: 'By this model the ball does not leave, so no gap can be closed.',
    caption: 'One input at a time, the others as stated; the least far-fetched first',
    input: 'Input',
    needed: 'Would have to be',
    off: 'Off by',
    inU: 'In its own uncertainties',
    exact: 'stated as exact',
  },
} as const;
