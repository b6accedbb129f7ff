/** `npm start`: installs what is missing, builds, serves the tool on this machine and opens it. */
import { spawn } from 'node:child_process';
import { parseArgs } from 'node:util';
import { buildIfChanged } from './build.mjs';
import { preparePackages, root, SetupError } from './setup.mjs';

/** The command that opens an address on this desktop, or null where there is no desktop. */
function opener(address) {
  if (process.env.CI || process.env.SSH_CONNECTION) return null;
  if (process.platform === 'darwin') return ['open', address];
  if (process.platform === 'win32') return ['cmd', '/c', 'start', '', address];
  const display = process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  return display ? ['xdg-open', address] : null;
}

function openBrowser(address) {
  const command = opener(address);
  if (command === null) return;
  const [program, ...args] = command;
  // Opening is a courtesy: the address is printed, so a failure here is not worth a word.
  spawn(program, args, { stdio: 'ignore', detached: true })
    .on('error', () => {})
    .unref();
}

async function start() {
  const { values } = parseArgs({
    options: { port: { type: 'string', default: '4173' }, 'no-open': { type: 'boolean' } },
  });
  const port = Number(values.port);
  if (!Number.isInteger(port) || port < 0 || port > 65_535) {
    throw new SetupError(`--port takes a whole number from 0 to 65535, not '${values.port}'.`);
  }
  preparePackages();
  if (!buildIfChanged()) throw new SetupError('The build failed (its message is above).');
  const { preview } = await import('vite');
  // The address is this machine's own; a taken port moves on to the next.
  const server = await preview({ root, preview: { port } });
  const address = server.resolvedUrls?.local[0];
  if (address === undefined) throw new SetupError('The server gave no local address.');
  console.log(`\nexitframe: ${address}\nCtrl+C ends it.`);
  if (!values['no-open']) openBrowser(address);
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.once(signal, () => process.exit(0));
  }
}

try {
  await start();
} catch (error) {
  const plain = error instanceof SetupError || error.code?.startsWith('ERR_PARSE_ARGS');
  console.error(plain ? error.message : error);
  process.exitCode = 1;
}
