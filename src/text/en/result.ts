export const result = {
  advice: 'What would help most',
  evidence: {
    title: 'Evidence',
    stale: 'Inputs changed: measure again. Below is the earlier result.',
  },
  noSpeed: 'No exit velocity:',
  noLead: 'No lead of the seal:',
  else: {
    title: 'What else the film tells',
    brokenFrom: 'From frame {frame} on the ball is no longer whole',
  },
  fit: {
    title: 'Fit: {model}',
    check: '{verdict}: {message}',
    verdict: { passed: 'passed', cautious: 'on the safe side', failed: 'look at this' },
  },
  centres: {
    title: 'Centres',
    summary: 'Centres of {found} frames, {used} used',
    frame: 'Frame',
    time: 'Time, ms',
    x: 'x, px',
    y: 'y, px',
    distance: 'Distance, mm',
    used: 'Used',
    use: {
      yes: 'yes',
      no: 'no: {reason}',
      leftOut: 'left out',
      manual: '{use} (placed by hand)',
    },
    byHand: 'By hand',
    restore: 'Restore',
    reject: 'Reject',
  },
} as const;
