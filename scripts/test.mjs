/** `npm test`: installs what is missing, then every check in turn; ends with what failed. */
import { audit } from './audit.mjs';
import { npm, prepareChromium, preparePackages, SetupError } from './setup.mjs';

/** Each check is the npm script of that name, or gives its own outcome; `needs` names what it cannot run without. */
const CHECKS = [
  { script: 'lint', title: 'Lint and format' },
  { script: 'types', title: 'Types' },
  { script: 'imports', title: 'Import rules' },
  { script: 'dead-code', title: 'Dead code' },
  { run: audit, title: 'Known vulnerabilities' },
  { script: 'unit', title: 'Unit, outside and headless tests' },
  { script: 'browser', title: 'Browser tests', needs: 'chromium' },
  { script: 'build', title: 'Build' },
  { script: 'e2e', title: 'End-to-end tests', needs: 'chromium' },
];

const announce = (title) => console.log(`\n=== ${title} ===`);

/** Runs a preparation; its problem is printed and returned as false. */
function prepared(prepare) {
  try {
    prepare();
    return true;
  } catch (error) {
    if (!(error instanceof SetupError)) throw error;
    console.error(error.message);
    return false;
  }
}

function runCheck({ script, run, title, needs }, available) {
  announce(title);
  const started = performance.now();
  let outcome = 'passed';
  if (needs !== undefined && !available.has(needs)) {
    console.error(`Not run: there is no ${needs}.`);
    outcome = 'not run';
  } else if (run !== undefined) outcome = run();
  else if (!npm(['run', '--silent', script])) outcome = 'failed';
  return { title, outcome, seconds: (performance.now() - started) / 1000 };
}

function test() {
  announce('Set-up');
  if (!prepared(preparePackages)) return false;
  const available = new Set();
  if (prepared(prepareChromium)) available.add('chromium');
  const results = CHECKS.map((check) => runCheck(check, available));

  announce('Summary');
  for (const { title, outcome, seconds } of results) {
    console.log(`${outcome.padEnd(11)} ${title} (${seconds.toFixed(0)} s)`);
  }
  const count = (...outcomes) => results.filter(({ outcome }) => outcomes.includes(outcome)).length;
  const bad = count('failed', 'not run');
  console.log(
    `${count('passed')} checks passed, ${bad} failed or not run, ${count('not reached')} without an answer`,
  );
  return bad === 0;
}

process.exitCode = test() ? 0 : 1;
