import { Fragment, type VNode } from 'preact';
import type { OwnNumber, OwnNumbers } from '../../app/ownNumbers';
import { letterText, numberText, SYMBOLS } from './symbols';
import { type Formula, inLine, SIGNS, symbolsIn, type Term } from './term';

/**
 * A formula with letters, below it the same with the numbers there are, below that what comes out, as the browser draws
 * it. Whoever does not see it is told it in one line.
 */
export function MathFormula(props: { readonly formula: Formula; readonly numbers: OwnNumbers }) {
  const { formula, numbers } = props;
  const { left, right } = formula;
  const numberOf = (name: OwnNumber) => {
    const own = numbers[name];
    return own === null ? null : numberText(name, own, false);
  };
  const filled = symbolsIn(right).some((name) => numbers[name] !== null);
  const outcome = numberOf(left);
  const lines = [
    `${letterText(left)} = ${inLine(right, letterText)}`,
    ...(filled ? [inLine(right, (name) => bracketed(numberOf(name)) ?? letterText(name))] : []),
    ...(outcome === null ? [] : [outcome]),
  ];
  return (
    <math display="block" class="formula" aria-label={lines.join(' = ')}>
      <mtable>
        <Row left={<Letter name={left} />}>
          <MathTerm term={right} draw={(name) => <Letter name={name} />} />
        </Row>
        {filled && (
          <Row left={null}>
            <MathTerm
              term={right}
              draw={(name) => {
                const text = numberOf(name);
                // No `mtext`: it would count as space, and the sign beside it lose its room.
                return text === null ? <Letter name={name} /> : <mn>{negative(text)}</mn>;
              }}
            />
          </Row>
        )}
        {outcome !== null && (
          <Row left={null}>
            <mtext class="formula-outcome">{outcome}</mtext>
          </Row>
        )}
      </mtable>
    </math>
  );
}

/** Read in a line, a unit that is itself a fraction stands in brackets, as does what is below zero. */
const bracketed = (text: string | null): string | null =>
  text !== null && (text.includes('/') || text.startsWith('−')) ? `(${text})` : text;

/** Below zero after another sign: in brackets. */
const negative = (text: string): string => (text.startsWith('−') ? `(${text})` : text);

function Row({ left, children }: { readonly left: VNode | null; readonly children: VNode }) {
  return (
    <mtr>
      <mtd>{left}</mtd>
      <mtd>
        <mo>=</mo>
      </mtd>
      <mtd>{children}</mtd>
    </mtr>
  );
}

function Letter({ name }: { readonly name: OwnNumber }): VNode {
  const { letter, below } = SYMBOLS[name];
  if (below === undefined) return <mi>{letter}</mi>;
  return (
    <msub>
      <mi>{letter}</mi>
      {/^\d$/.test(below) ? <mn>{below}</mn> : <mi>{below}</mi>}
    </msub>
  );
}

function MathTerm(props: {
  readonly term: Term;
  readonly draw: (name: OwnNumber) => VNode;
}): VNode {
  const { term, draw } = props;
  const part = (one: Term) => <MathTerm term={one} draw={draw} />;
  switch (term.is) {
    case 'symbol':
      return draw(term.name);
    case 'number':
      return <mn>{term.text}</mn>;
    case 'over':
      return (
        <mfrac>
          <mrow>{part(term.above)}</mrow>
          <mrow>{part(term.below)}</mrow>
        </mfrac>
      );
    case 'times':
    case 'minus':
    case 'plus':
      return (
        <mrow>
          {term.parts.map((one, i) => (
            // The parts of a formula never change places.
            <Fragment key={i}>
              {i > 0 && <mo>{SIGNS[term.is]}</mo>}
              {part(one)}
            </Fragment>
          ))}
        </mrow>
      );
    case 'root':
      return <msqrt>{part(term.of)}</msqrt>;
    case 'group':
      return (
        <mrow>
          <mo>(</mo>
          {part(term.of)}
          <mo>)</mo>
        </mrow>
      );
  }
}
