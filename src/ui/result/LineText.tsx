import type { Line, Part } from '../../report/line';

/** A line in its looks. */
export function LineText({ line }: { readonly line: Line }) {
  return (
    <p class={line.missing ? 'muted' : ''}>
      {line.parts.map((part, index) => (
        <Piece key={index} part={part} />
      ))}
    </p>
  );
}

function Piece({ part: { text, look } }: { readonly part: Part }) {
  if (look === 'strong') return <strong>{text}</strong>;
  return look === 'plain' ? (
    text
  ) : (
    <span class={look === 'alarm' ? 'disagrees' : look}>{text}</span>
  );
}
