/** `npm run bench -- NAME`: how long something takes on this machine. No test: it cannot fail. */
import { launch } from './launch';
import { memory } from './memory';
import { monteCarlo } from './monteCarlo';
import { pipeline } from './pipeline';
import { reducing } from './reducing';
import { scrub } from './scrub';

const BENCHES: Readonly<Record<string, (say: (line: string) => void) => void | Promise<void>>> = {
  launch,
  memory,
  monteCarlo,
  pipeline,
  reducing,
  scrub,
};

const name = process.argv[2] ?? '';
const bench = BENCHES[name];
if (bench === undefined) {
  process.stderr.write(`Usage: npm run bench -- ${Object.keys(BENCHES).join('|')}\n`);
  process.exitCode = 2;
} else await bench((line) => process.stdout.write(`${line}\n`));
