/** `npm run codes`: writes docs/error-codes.md, every reason the program can give, read off its sources. */
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { english } from '../src/text/en';

const root = fileURLToPath(new URL('..', import.meta.url));
export const codesFile = join(root, 'docs', 'error-codes.md');

/** A reason as the source states it. */
export interface Stated {
  readonly code: string;
  /** `…` where a value stands. */
  readonly message: string;
  readonly file: string;
}

const OPTIONS: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2023,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  jsx: ts.JsxEmit.ReactJSX,
  jsxImportSource: 'preact',
  lib: ['lib.es2023.d.ts', 'lib.dom.d.ts', 'lib.dom.iterable.d.ts'],
  types: [],
  strict: true,
  noEmit: true,
};

/**
 * The reasons that files state: wherever a text is given to a parameter or property called `code`, whatever it is a
 * parameter or property of. Only a code handed on (`code`, `reason.code`) is passed over, since it is stated elsewhere.
 * Throws where a code is put together so that no reading of the source can tell it.
 */
export function reasonsIn(files: readonly string[], base: string = root): Stated[] {
  const program = ts.createProgram(files, OPTIONS);
  const checker = program.getTypeChecker();
  return files.flatMap((path) => {
    const source = program.getSourceFile(path);
    if (source === undefined) throw new Error(`${path} cannot be read.`);
    const file = relative(base, path).split(sep).join('/');
    const found: Stated[] = [];
    const visit = (node: ts.Node): void => {
      for (const { code, message } of givenIn(node, checker)) {
        for (const text of codesOf(code, checker)) {
          for (const words of sentences(message, checker))
            found.push({ code: text, message: words, file });
        }
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
    return found;
  });
}

interface Given {
  readonly code: ts.Expression;
  readonly message: ts.Expression | undefined;
}

function givenIn(node: ts.Node, checker: ts.TypeChecker): Given[] {
  if (ts.isObjectLiteralExpression(node)) {
    const value = (name: string): ts.Expression | undefined => {
      const property = node.properties.find((one) => one.name?.getText() === name);
      if (property === undefined) return undefined;
      if (ts.isPropertyAssignment(property)) return property.initializer;
      return ts.isShorthandPropertyAssignment(property) ? property.name : undefined;
    };
    const code = value('code');
    return code === undefined ? [] : [{ code, message: value('message') }];
  }
  if (!ts.isCallExpression(node) && !ts.isNewExpression(node)) return [];
  const names = checker.getResolvedSignature(node)?.parameters.map(({ name }) => name) ?? [];
  const argument = (name: string) => node.arguments?.[names.indexOf(name)];
  const code = argument('code');
  return code === undefined ? [] : [{ code, message: argument('message') }];
}

/** What a name was declared as, by `const` and nothing else; undefined: it is a parameter, say, or not a name. */
function declaredAs(node: ts.Expression, checker: ts.TypeChecker): ts.Expression | undefined {
  if (!ts.isIdentifier(node)) return undefined;
  const symbol = ts.isShorthandPropertyAssignment(node.parent)
    ? checker.getShorthandAssignmentValueSymbol(node.parent)
    : checker.getSymbolAtLocation(node);
  const declaration = symbol?.valueDeclaration;
  return declaration !== undefined && ts.isVariableDeclaration(declaration)
    ? declaration.initializer
    : undefined;
}

/** A code that was stated before and is handed on here. */
const isHandedOn = (node: ts.Expression): boolean =>
  (ts.isIdentifier(node) && node.text === 'code') ||
  (ts.isPropertyAccessExpression(node) && node.name.text === 'code');

function codesOf(node: ts.Expression, checker: ts.TypeChecker): readonly string[] {
  const declared = declaredAs(node, checker);
  if (declared !== undefined && ts.isStringLiteralLike(declared)) return [declared.text];
  if (isHandedOn(node)) return [];
  const type = checker.getTypeAtLocation(node);
  const parts = type.isUnion() ? type.types : [type];
  if (parts.every((part) => part.isStringLiteral())) return parts.map(({ value }) => value);
  // Exit codes are numbers, a schema's `code` is a schema.
  if (parts.every((part) => (part.flags & ts.TypeFlags.StringLike) === 0)) return [];
  const { line } = node.getSourceFile().getLineAndCharacterOfPosition(node.getStart());
  throw new Error(
    `${node.getSourceFile().fileName}:${line + 1}: the code \`${node.getText()}\` cannot be read off the source.`,
  );
}

/** What an expression can say, with `…` where a value stands. */
function sentences(node: ts.Expression | undefined, checker: ts.TypeChecker): readonly string[] {
  if (node === undefined) return ['…'];
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isTemplateExpression(node)) {
    return [node.head.text + node.templateSpans.map(({ literal }) => `…${literal.text}`).join('')];
  }
  if (ts.isCallExpression(node) && node.expression.getText() === 't') {
    const [key] = node.arguments;
    return key !== undefined && ts.isStringLiteralLike(key) ? [textOf(key.text)] : ['…'];
  }
  if (ts.isParenthesizedExpression(node)) return sentences(node.expression, checker);
  if (ts.isConditionalExpression(node)) {
    return [...sentences(node.whenTrue, checker), ...sentences(node.whenFalse, checker)];
  }
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken) {
    const ends = sentences(node.right, checker);
    return sentences(node.left, checker).flatMap((start) => ends.map((end) => start + end));
  }
  const declared = declaredAs(node, checker);
  return declared === undefined ? ['…'] : sentences(declared, checker);
}

/** A text of the page in English. */
function textOf(key: string): string {
  let at: unknown = english;
  for (const part of key.split('.')) at = (at as Readonly<Record<string, unknown>>)[part];
  return String(at).replace(/\{\w+\}/g, '…');
}

function sourceFiles(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/** The text docs/error-codes.md should have. */
export function codesText(): string {
  const lines = reasonsIn([...sourceFiles('src'), ...sourceFiles('workers')])
    .sort((a, b) => (a.code === b.code ? 0 : a.code < b.code ? -1 : 1))
    .map(
      ({ code, message, file }) => `| \`${code}\` | ${message.replaceAll('|', '\\|')} | ${file} |`,
    );
  return `# Reasons and their codes

Written by \`npm run codes\` from the sources; \`…\` stands for a value. Codes are stable, messages may change.

| code | message | given in |
|---|---|---|
${[...new Set(lines)].join('\n')}
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(join(root, 'docs'), { recursive: true });
  writeFileSync(codesFile, codesText());
}
