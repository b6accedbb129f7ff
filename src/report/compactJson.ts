/** What is no longer than this stays on one line, characters. */
const LINE = 88;

/** JSON to be read on paper: what fits on a line stands on one. The same data as `JSON.stringify` gives. */
export function compactJson(value: unknown, indent = ''): string {
  const flat = JSON.stringify(value);
  const isTree = typeof value === 'object' && value !== null;
  if (!isTree || indent.length + flat.length <= LINE) return flat;
  const deeper = `${indent}  `;
  const items = Array.isArray(value)
    ? value.map((one) => compactJson(one, deeper))
    : Object.entries(value)
        .filter(([, one]) => one !== undefined)
        .map(([key, one]) => `${JSON.stringify(key)}: ${compactJson(one, deeper)}`);
  const [open, close] = Array.isArray(value) ? ['[', ']'] : ['{', '}'];
  return `${open}\n${items.map((item) => deeper + item).join(',\n')}\n${indent}${close}`;
}
