import type { OwnNumber } from '../../app/ownNumbers';

/** A formula as a tree: drawn as MathML, and read out as text. */
export type Term =
  | { readonly is: 'symbol'; readonly name: OwnNumber }
  | { readonly is: 'number'; readonly text: string }
  | { readonly is: 'over'; readonly above: Term; readonly below: Term }
  | { readonly is: 'times' | 'minus' | 'plus'; readonly parts: readonly Term[] }
  | { readonly is: 'root' | 'group'; readonly of: Term };

export interface Formula {
  readonly left: OwnNumber;
  readonly right: Term;
}

export const symbol = (name: OwnNumber): Term => ({ is: 'symbol', name });
export const number = (text: string): Term => ({ is: 'number', text });
export const over = (above: Term, below: Term): Term => ({ is: 'over', above, below });
export const times = (...parts: Term[]): Term => ({ is: 'times', parts });
export const minus = (...parts: Term[]): Term => ({ is: 'minus', parts });
export const plus = (...parts: Term[]): Term => ({ is: 'plus', parts });
export const root = (of: Term): Term => ({ is: 'root', of });
export const group = (of: Term): Term => ({ is: 'group', of });

export const SIGNS = { times: '×', minus: '−', plus: '+' } as const;

/** The symbols of a term in the order they stand, each once. */
export function symbolsIn(term: Term): readonly OwnNumber[] {
  switch (term.is) {
    case 'symbol':
      return [term.name];
    case 'number':
      return [];
    case 'over':
      return unique([term.above, term.below]);
    case 'times':
    case 'minus':
    case 'plus':
      return unique(term.parts);
    default:
      return symbolsIn(term.of);
  }
}

const unique = (terms: readonly Term[]): readonly OwnNumber[] => [
  ...new Set(terms.flatMap(symbolsIn)),
];

/** The term in one line, its symbols as `say` says them. */
export function inLine(term: Term, say: (name: OwnNumber) => string): string {
  const line = (one: Term) => inLine(one, say);
  switch (term.is) {
    case 'symbol':
      return say(term.name);
    case 'number':
      return term.text;
    case 'over':
      return `${whole(term.above, line)} / ${whole(term.below, line)}`;
    case 'times':
    case 'minus':
    case 'plus':
      return term.parts.map(line).join(` ${SIGNS[term.is]} `);
    case 'root':
      return `√(${line(term.of)})`;
    case 'group':
      return `(${line(term.of)})`;
  }
}

/** In brackets where a line would else be read another way. */
const whole = (term: Term, line: (one: Term) => string): string =>
  'parts' in term ? `(${line(term)})` : line(term);
