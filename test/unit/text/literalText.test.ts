import { readdirSync, readFileSync } from 'node:fs';
import { sep } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const TEXT_ATTRIBUTES =
  /^(label|title|hint|facts|placeholder|alt|doing|caption|summary|name|aria-(label|description|roledescription|valuetext))$/;
/** Attributes of that name which no one reads. */
const READ_BY_NO_ONE: ReadonlySet<string> = new Set([
  'Icon',
  'input',
  'FileChoice',
  'ResultFigure',
]);
/** Object properties that become labels: choices of a field, columns, facts. */
const TEXT_PROPERTIES = /^(label|title|hint|words|message|remedy|does)$/;

const NAMES: ReadonlySet<string> = new Set(['exitframe', 'SHA-256']);

/** Two letters in a row make a word; units and symbols alone are the same in every language. */
const isWord = (text: string): boolean =>
  /\p{L}{2}/u.test(text) &&
  !NAMES.has(text.trim()) &&
  !/^[\d.,/ ]*(m|mm|cm|px|s|ms|µs|ns|g|kg|Hz|\/s|k1|k2)$/.test(text.trim());

/** Literal texts in an expression that is shown: alone, or on a side of a choice; arguments of calls are not. */
function shownIn(node: ts.Expression): string[] {
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isTemplateExpression(node)) {
    return [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)];
  }
  if (ts.isArrayLiteralExpression(node)) return node.elements.flatMap(shownIn);
  if (ts.isSpreadElement(node) || ts.isAsExpression(node)) return shownIn(node.expression);
  if (ts.isParenthesizedExpression(node)) return shownIn(node.expression);
  if (ts.isConditionalExpression(node))
    return [...shownIn(node.whenTrue), ...shownIn(node.whenFalse)];
  if (ts.isBinaryExpression(node)) {
    const { kind } = node.operatorToken;
    const joins =
      kind === ts.SyntaxKind.AmpersandAmpersandToken ||
      kind === ts.SyntaxKind.BarBarToken ||
      kind === ts.SyntaxKind.QuestionQuestionToken ||
      kind === ts.SyntaxKind.PlusToken;
    return joins ? [...shownIn(node.left), ...shownIn(node.right)] : [];
  }
  return [];
}

/** Texts in a source file that a person would read. */
function literalTexts(source: string, file = 'a.tsx'): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isJsxText(node)) found.push(node.text.trim());
    if (ts.isJsxExpression(node) && node.expression && !ts.isJsxAttribute(node.parent)) {
      found.push(...shownIn(node.expression));
    }
    if (ts.isJsxAttribute(node) && node.initializer !== undefined) {
      const name = node.name.getText();
      const element = node.parent.parent.tagName.getText();
      const counts =
        TEXT_ATTRIBUTES.test(name) && !(name === 'name' && READ_BY_NO_ONE.has(element));
      if (counts && ts.isStringLiteral(node.initializer)) found.push(node.initializer.text);
      else if (counts && ts.isJsxExpression(node.initializer) && node.initializer.expression) {
        found.push(...shownIn(node.initializer.expression));
      }
    }
    if (ts.isPropertyAssignment(node) && TEXT_PROPERTIES.test(node.name.getText())) {
      // What an edit is called in the history is a matter of its own.
      const call = node.parent.parent;
      const edit = ts.isCallExpression(call) && /\.edit$/.test(call.expression.getText());
      if (!edit) found.push(...shownIn(node.initializer));
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX));
  return found.filter(isWord);
}

const files = ['src/ui', 'src/plots'].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.tsx'))
    .map((file) => [folder, ...file.split(sep)].join('/')),
);

describe('texts of the page', () => {
  it.each([
    ['<p>Some words</p>', ['Some words']],
    ['<p>{open ? "some frames" : `none`}</p>', ['some frames', 'none']],
    ['<Field label="Diameter" placeholder="200 mm" class="wide" />', ['Diameter']],
    ['<Icon name="next" />', []],
    ["<p>{t('panels.next', { step })} {unit}</p>", []],
    ["const choices = [{ value: 'down', label: 'downwards' }];", ['downwards']],
    ["<Facts facts={[['Mass', mass]]} />", ['Mass']],
    ["shots.edit(change, { label: 'name' })", []],
  ])('the scan of %s finds %j', (source, words) => {
    expect(literalTexts(source).map((one) => one.trim())).toEqual(words);
  });

  it('stand in the catalogues', () => {
    const withText = files.filter((file) => literalTexts(readFileSync(file, 'utf8')).length > 0);
    expect(withText).toEqual([]);
  });
});
