/** `npm test`: installs what is missing, then every check in turn; ends with what failed. */
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { audit } from './audit.mjs';
import { failuresIn } from './failures.mjs';
import { npm, prepareChromium, preparePackages, root, SetupError } from './setup.mjs';

/**
 * Each check is the npm script of that name, or gives its own outcome; `needs` names what it cannot run without,
 * `tests` that it is vitest, whose failures are told again at the end.
 */
const CHECKS = [
  { script: 'lint', title: 'Lint and format' },
  { script: 'types', title: 'Types' },
  { script: 'imports', title: 'Import rules' },
  { script: 'dead-code', title: 'Dead code' },
  { run: audit, title: 'Known vulnerabilities' },
  { script: 'unit', title: 'Unit, outside and headless tests', tests: true },
  { script: 'browser', title: 'Browser tests', needs: 'chromium', tests: true },
  { script: 'build', title: 'Build' },
  { script: 'e2e', title: 'End-to-end tests', needs: 'chromium', tests: true },
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

/** Runs a script of vitest; what failed, none where it passed. */
function runTests(script) {
  const report = `${root}/node_modules/.cache/tests/${script}.json`;
  rmSync(report, { force: true });
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  if (npm(['run', '--silent', script, '--', ...reporters])) return [];
  return failuresIn(existsSync(report) ? readFileSync(report, 'utf8') : '');
}

function runCheck({ script, run, title, needs, tests }, available) {
  announce(title);
  const started = performance.now();
  let outcome = 'passed';
  let failures = [];
  if (needs !== undefined && !available.has(needs)) {
    console.error(`Not run: there is no ${needs}.`);
    outcome = 'not run';
  } else if (run !== undefined) outcome = run();
  else if (tests) {
    failures = runTests(script);
    if (failures.length > 0) outcome = 'failed';
  } else if (!npm(['run', '--silent', script])) outcome = 'failed';
  return { title, outcome, failures, seconds: (performance.now() - started) / 1000 };
}

function test() {
  announce('Set-up');
  if (!prepared(preparePackages)) return false;
  const available = new Set();
  if (prepared(prepareChromium)) available.add('chromium');
  const results = CHECKS.map((check) => runCheck(check, available));

  announce('Summary');
  for (const { title, outcome, failures, seconds } of results) {
    console.log(`${outcome.padEnd(11)} ${title} (${seconds.toFixed(0)} s)`);
    for (const failure of failures) console.log(failure.replaceAll(/^/gm, '            '));
  }
  const count = (...outcomes) => results.filter(({ outcome }) => outcomes.includes(outcome)).length;
  const bad = count('failed', 'not run');
  console.log(
    `${count('passed')} checks passed, ${bad} failed or not run, ${count('not reached')} without an answer`,
  );
  return bad === 0;
}

process.exitCode = test() ? 0 : 1;
