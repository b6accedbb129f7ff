/** `npm run audit`: asks the npm registry for known vulnerabilities of what the program ships. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { root } from './setup.mjs';

/** A network that swallows questions must not hold up the other checks. */
const LONGEST_MS = 60_000;
/** Grave enough to fail, worst first, as npm names them. */
const GRAVE = ['critical', 'high'];

/**
 * What `npm audit --json` says, with sentences to print. 'not reached': the registry gave no answer, so nothing is
 * known; that is neither passed nor failed.
 */
export function judgeAudit(text) {
  let answer;
  try {
    answer = JSON.parse(text);
  } catch {
    return notReached('npm gave no answer that can be read');
  }
  const counts = answer?.metadata?.vulnerabilities;
  if (counts === undefined) return notReached(answer?.message ?? 'npm gave no counts');
  const named = Object.values(answer.vulnerabilities ?? {})
    .filter(({ severity }) => GRAVE.includes(severity))
    .map(({ name, severity, range }) => `${name} ${range}: ${severity}`);
  const grave = GRAVE.reduce((sum, severity) => sum + (counts[severity] ?? 0), 0);
  return {
    outcome: grave === 0 ? 'passed' : 'failed',
    lines: [
      `Packages the program ships: ${grave} with grave known vulnerabilities, ${(counts.total ?? 0) - grave} with lesser ones.`,
      ...named,
    ],
  };
}

const notReached = (why) => ({
  outcome: 'not reached',
  lines: [`NOT AUDITED: the registry was not reached (${why}). Run \`npm run audit\` where it is.`],
});

/** Asks, prints what was said, and gives the outcome. */
export function audit() {
  const { stdout } = spawnSync('npm', ['audit', '--omit=dev', '--json', '--fetch-retries=0'], {
    ...{ cwd: root, encoding: 'utf8', shell: process.platform === 'win32' },
    stdio: ['ignore', 'pipe', 'ignore'],
    timeout: LONGEST_MS,
  });
  const { outcome, lines } = judgeAudit(stdout ?? '');
  for (const line of lines) console.log(line);
  return outcome;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  process.exitCode = audit() === 'failed' ? 1 : 0;
}
