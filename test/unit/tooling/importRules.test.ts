import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import extractConfig from 'dependency-cruiser/config-utl/extract-depcruise-config';
import extractOptions from 'dependency-cruiser/config-utl/extract-depcruise-options';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/** One line a wrong import: file, what it imports, the rule that must refuse it. */
const REFUSED: readonly (readonly [file: string, statement: string, rule: string])[] = [
  ['src/core/a.ts', "import '../shot/ok';", 'folder src/core'],
  ['src/shot/a.ts', "import '../geometry/ok';", 'folder src/shot'],
  ['src/geometry/a.ts', "import '../fit/ok';", 'folder src/geometry'],
  ['src/geometry/b.ts', "import { ok } from '../shot/ok'; ok;", 'types only src/geometry'],
  ['src/clock/a.ts', "import type { Ok } from '../geometry/ok';", 'folder src/clock'],
  ['src/image/a.ts', "import type { Ok } from '../shot/ok';", 'folder src/image'],
  ['src/fit/a.ts', "import '../image/ok';", 'folder src/fit'],
  ['src/tracking/a.ts', "import '../uncertainty/ok';", 'folder src/tracking'],
  ['src/uncertainty/a.ts', "import '../exit/ok';", 'folder src/uncertainty'],
  ['src/exit/a.ts', "import '../image/ok';", 'folder src/exit'],
  ['src/seal/a.ts', "import '../exit/ok';", 'folder src/seal'],
  ['src/launch/a.ts', "import '../exit/ok';", 'folder src/launch'],
  ['src/reduction/a.ts', "import '../footage/ok';", 'folder src/reduction'],
  ['src/footage/a.ts', "import '../image/ok';", 'folder src/footage'],
  ['src/protocol/a.ts', "import { ok } from '../reduction/ok'; ok;", 'types only src/protocol'],
  ['src/app/a.ts', "import '../image/ok';", 'folder src/app'],
  ['src/app/e.ts', "import { ok } from '../reduction/ok'; ok;", 'types only src/app'],
  ['src/app/f.ts', "import * as c from 'comlink'; c;", 'package comlink'],
  ['src/plots/a.ts', "import '../fit/ok';", 'folder src/plots'],
  ['src/text/a.ts', "import '../app/ok';", 'folder src/text'],
  ['src/app/g.ts', "import '../text/ok';", 'folder src/app'],
  ['src/ui/h.ts', "import m from 'intl-messageformat'; m;", 'package intl-messageformat'],
  ['src/ui/a.ts', "import '../../workers/ok';", 'folder src/ui'],
  ['src/ui/b.ts', "import '../reduction/ok';", 'folder src/ui'],
  ['src/headless/a.ts', "import '../app/ok';", 'folder src/headless'],
  ['src/exit/b.ts', "import '../../sample-clips/ok';", 'folder src/exit'],
  ['src/app/b.ts', "import '../../test/ok';", 'folder src/app'],
  ['workers/a.ts', "import '../src/app/ok';", 'folder workers'],
  ['sample-clips/a.ts', "import '../src/core/ok';", 'folder sample-clips'],
  ['test/validate/render/a.ts', "import '../../../src/core/ok';", 'folder test/validate/render'],
  ['src/misc/a.ts', "import '../core/ok';", 'unlisted folder'],
  [
    'src/core/b.ts',
    "import { readFileSync } from 'node:fs'; readFileSync;",
    'node only at the edge',
  ],
  ['src/ui/c.ts', "import { join } from 'node:path'; join;", 'node only at the edge'],
  ['workers/b.ts', "import '../src/footage/node/ok';", 'node footage only from node'],
  ['src/app/c.ts', "import * as m from 'mediabunny'; m;", 'package mediabunny|@ffmpeg/core'],
  ['src/image/b.ts', "import cv from '@techstark/opencv-js'; cv;", 'package @techstark/opencv-js'],
  ['src/ui/d.ts', "import * as c from 'comlink'; c;", 'package comlink'],
  ['src/ui/e.ts', "import { select } from 'd3'; select;", 'package d3|d3-[a-z]+'],
  ['src/ui/f.ts', "import type { Selection } from 'd3';", 'package d3|d3-[a-z]+'],
  ['src/fit/b.ts', "import { Matrix } from 'ml-matrix'; Matrix;", 'package ml-matrix'],
  [
    'src/uncertainty/b.ts',
    "import q from '@stdlib/stats-base-dists-t-quantile'; q;",
    'package @stdlib/[^/]+',
  ],
  ['src/ui/g.ts', "import * as v from 'valibot'; v;", 'package valibot'],
  ['src/seal/b.ts', "import { sha256 } from 'hash-wasm'; sha256;", 'package hash-wasm'],
  [
    'src/footage/b.ts',
    "import { ZipReader } from '@zip.js/zip.js'; ZipReader;",
    'package @zip.js/zip.js',
  ],
  [
    'src/core/c.ts',
    "import { signal } from '@preact/signals'; signal;",
    'package preact|@preact/signals',
  ],
  ['src/app/d.ts', "import fc from 'fast-check'; fc;", 'unlisted package'],
  ['src/core/d.ts', "import './e';", 'cycle'],
  ['src/core/alone.ts', 'export const alone = 1;', 'orphan'],
  ['src/core/f.ts', "import './missing';", 'unresolvable'],
];

/** Imports that every rule must let pass. */
const ALLOWED: readonly (readonly [file: string, statement: string])[] = [
  ['src/geometry/fine.ts', "import type { Ok } from '../shot/ok'; import '../core/ok';"],
  ['src/reduction/fine.ts', "import '../seal/ok'; import { ok } from '../shot/ok'; ok;"],
  ['src/protocol/errors.ts', "import type { Ok } from '../reduction/ok'; import 'comlink';"],
  ['src/app/fine.ts', "import type { Ok } from '../reduction/ok'; import '../clock/ok';"],
  ['src/core/linalg.ts', "import 'ml-matrix';"],
  ['src/plots/fine.ts', "import 'd3'; import type { Ok } from '../shot/ok';"],
  ['src/footage/node/fine.ts', "import 'node:fs'; import '../ok';"],
  [
    'src/headless/fine.ts',
    "import 'node:fs'; import '../footage/node/ok'; import '../reduction/ok';",
  ],
  [
    'workers/fine.ts',
    "import 'comlink'; import '../src/reduction/ok'; import '../src/footage/ok';",
  ],
  ['test/fine.ts', "import '../src/app/ok'; import '../sample-clips/ok'; import 'node:fs';"],
];

const FOLDERS = [
  ...[
    'core',
    'shot',
    'geometry',
    'clock',
    'image',
    'fit',
    'tracking',
    'uncertainty',
    'series',
    'exit',
  ],
  ...['seal', 'reduction', 'footage', 'footage/node', 'protocol', 'app', 'plots', 'text', 'ui'],
].map((name) => `src/${name}`);

const project = process.cwd();
// A tree of its own outside the project: the rules are the real ones, the wrong imports are not.
const tree = realpathSync(mkdtempSync(join(tmpdir(), 'import-rules-')));
/** file -> names of the rules it broke */
const broken = new Map<string, Set<string>>();

function write(file: string, content: string) {
  const path = join(tree, file);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, `${content}\n`);
}

beforeAll(async () => {
  symlinkSync(join(project, 'node_modules'), join(tree, 'node_modules'), 'dir');
  for (const file of ['package.json', 'tsconfig.base.json']) {
    symlinkSync(join(project, file), join(tree, file));
  }
  for (const folder of [...FOLDERS, 'workers', 'sample-clips', 'test']) {
    write(`${folder}/ok.ts`, 'export type Ok = 1;\nexport const ok: Ok = 1;');
  }
  for (const [file, statement] of [...REFUSED, ...ALLOWED]) {
    write(file, `${statement}\nexport {};`);
  }
  // The other half of the cycle: it is reported where it is met first.
  write('src/core/e.ts', "import type { D } from './d'; export type E = D;");
  const config = join(project, '.dependency-cruiser.mjs');
  const rules = await extractConfig(config);
  const options = await extractOptions(config);
  const { output } = await cruise(['src', 'workers', 'sample-clips', 'test'], {
    ...options,
    baseDir: tree,
    validate: true,
    ruleSet: rules,
  });
  for (const { from, rule } of (output as ICruiseResult).summary.violations) {
    broken.set(from, (broken.get(from) ?? new Set()).add(rule.name));
  }
});

afterAll(() => rmSync(tree, { recursive: true }));

describe('import rules', () => {
  it.each(REFUSED)('refuse %s: %s (%s)', (file, _statement, rule) => {
    expect([...(broken.get(file) ?? [])]).toContain(rule);
  });

  it.each(ALLOWED)('let %s: %s', (file) => {
    expect([...(broken.get(file) ?? [])]).toEqual([]);
  });
});
