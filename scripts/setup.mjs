/**
 * What `npm start` and `npm test` need before anything of the project can run.
 * Node built-ins only: nothing is installed yet when this is loaded.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { findChromium } from './chromium.mjs';

/** The project's folder; scripts may be called from anywhere. */
export const root = fileURLToPath(new URL('..', import.meta.url));

/** Why the set-up cannot go on, in words to print without a stack. */
export class SetupError extends Error {}

/** Why `version` ('20.19.0') is too old for the build tool, or null where it will do. */
export function nodeProblem(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  const enough = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22;
  return enough
    ? null
    : `Node ${version} cannot run exitframe: it needs Node 20.19 or newer in that line, or 22.12 or newer. Install one (https://nodejs.org) and try again.`;
}

/**
 * Whether an installation holds what the lock file lists, both given as parsed JSON. The
 * installation's own list is the one npm writes into node_modules last, so one cut short has none.
 * Packages for other platforms may be missing.
 */
export function installMatches(lock, installed) {
  const wanted = lock.packages;
  const present = installed.packages;
  const kept = Object.keys(present).every((path) => path in wanted);
  return (
    kept &&
    Object.entries(wanted).every(([path, { version, optional }]) => {
      if (path === '') return true;
      return path in present ? present[path].version === version : optional === true;
    })
  );
}

function packagesReady() {
  const list = `${root}/node_modules/.package-lock.json`;
  if (!existsSync(list)) return false;
  const read = (path) => JSON.parse(readFileSync(path, 'utf8'));
  return installMatches(read(`${root}/package-lock.json`), read(list));
}

/** Runs a command in the project's folder with its output on this terminal. True where it exits 0. */
export function run(command, args, options = {}) {
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit', ...options });
  return status === 0;
}

/** Runs npm with its output on this terminal. True where it exits 0. */
export function npm(args) {
  // Under `npm start` npm names its own script: the same npm, and no shell needed to find it.
  const cli = process.env.npm_execpath;
  return cli?.endsWith('.js')
    ? run(process.execPath, [cli, ...args])
    : run('npm', args, { shell: process.platform === 'win32' });
}

/** Node is new enough and the locked packages are there; installs them where they are not. */
export function preparePackages() {
  const problem = nodeProblem(process.versions.node);
  if (problem !== null) throw new SetupError(problem);
  if (packagesReady()) return;
  console.log('Installing the packages of package-lock.json (once) ...');
  if (!npm(['ci', '--no-audit', '--no-fund'])) {
    throw new SetupError(
      '`npm ci` failed (its message is above). It needs the npm registry: check the network or the proxy, then try again.',
    );
  }
}

const succeeds = (command, args) => spawnSync(command, args, { stdio: 'ignore' }).status === 0;

/** A Chromium for the browser tests; installs Debian's where this machine allows it. */
export function prepareChromium() {
  if (findChromium() !== null) return;
  const advice =
    'The browser and end-to-end tests drive a Chromium. Install one (Debian, Ubuntu: `apt-get install chromium`) or set CHROMIUM_PATH to its program, then try again. `npm start` needs none.';
  if (process.env.CHROMIUM_PATH) {
    throw new SetupError(
      `No Chromium at CHROMIUM_PATH (${process.env.CHROMIUM_PATH}) nor elsewhere. ${advice}`,
    );
  }
  if (!existsSync('/etc/debian_version') || !succeeds('apt-get', ['--version'])) {
    throw new SetupError(`No Chromium found. ${advice}`);
  }
  const isRoot = process.getuid?.() === 0;
  if (!isRoot && !succeeds('sudo', ['-n', 'true'])) {
    throw new SetupError(`No Chromium found, and installing it needs root. ${advice}`);
  }
  console.log('Installing Chromium from Debian packages for the browser tests (once) ...');
  const aptGet = (...args) => {
    const command = ['env', 'DEBIAN_FRONTEND=noninteractive', 'apt-get', ...args];
    const [program, ...rest] = isRoot ? command : ['sudo', '-n', ...command];
    return run(program, rest);
  };
  const installed =
    aptGet('-qq', 'update') &&
    aptGet('-qq', 'install', '-y', '--no-install-recommends', 'chromium');
  if (!installed || findChromium() === null) {
    throw new SetupError(`Chromium could not be installed (the messages are above). ${advice}`);
  }
}
