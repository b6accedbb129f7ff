/** `npm run codes`: writes docs/error-codes.md, every reason the program can give, read off its sources. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const root = fileURLToPath(new URL('..', import.meta.url));
export const codesFile = join(root, 'docs', 'error-codes.md');

/** A reason as the source states it. */
interface Stated {
  readonly code: string;
  readonly message: string;
  readonly file: string;
}

const isCode = (node: ts.Node | undefined): node is ts.StringLiteral =>
  node !== undefined && ts.isStringLiteral(node) && /^[a-z]+([A-Z][a-z]*)*$/.test(node.text);

/** A message with `…` where a value stands; null where the expression is no sentence: labels begin small. */
function sentence(node: ts.Node | undefined): string | null {
  if (node === undefined) return null;
  if (ts.isStringLiteralLike(node)) return /^[A-Z].* /.test(node.text) ? node.text : null;
  if (!ts.isTemplateExpression(node)) return null;
  return node.head.text + node.templateSpans.map(({ literal }) => `…${literal.text}`).join('');
}

/** The code and the message behind it in a call, `failure('code', 'Message.')`, or in an object. */
function statedIn(node: ts.Node): Omit<Stated, 'file'> | null {
  let pair: readonly (ts.Node | undefined)[] = [];
  if (ts.isCallExpression(node) || ts.isNewExpression(node)) {
    const args = node.arguments ?? [];
    const at = args.findIndex((arg, i) => isCode(arg) && sentence(args[i + 1]) !== null);
    if (at >= 0) pair = [args[at], args[at + 1]];
  } else if (ts.isObjectLiteralExpression(node)) {
    const property = (name: string) =>
      node.properties.find((p) => ts.isPropertyAssignment(p) && p.name.getText() === name);
    pair = [property('code'), property('message')].map((p) =>
      p !== undefined && ts.isPropertyAssignment(p) ? p.initializer : undefined,
    );
  }
  const [code, said] = pair;
  const message = sentence(said);
  return isCode(code) && message !== null ? { code: code.text, message } : null;
}

function reasonsIn(path: string): Stated[] {
  const text = readFileSync(path, 'utf8');
  const file = relative(root, path).split(sep).join('/');
  const found: Stated[] = [];
  const visit = (node: ts.Node): void => {
    const stated = statedIn(node);
    if (stated !== null) found.push({ ...stated, file });
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true));
  return found;
}

function sourceFiles(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/** Reasons are made below the components, which only show them. */
const givesReasons = (path: string) => !relative(root, path).startsWith(join('src', 'ui'));

/** The text docs/error-codes.md should have. */
export function codesText(): string {
  const rows = [...sourceFiles('src'), ...sourceFiles('workers')]
    .filter(givesReasons)
    .flatMap(reasonsIn)
    .sort((a, b) => (a.code === b.code ? 0 : a.code < b.code ? -1 : 1))
    .map(
      ({ code, message, file }) => `| \`${code}\` | ${message.replaceAll('|', '\\|')} | ${file} |`,
    );
  return `# Reasons and their codes

Written by \`npm run codes\` from the sources; \`…\` stands for a value. Codes are stable, messages may change.

| code | message | given in |
|---|---|---|
${rows.join('\n')}
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(join(root, 'docs'), { recursive: true });
  writeFileSync(codesFile, codesText());
}
