/** A path drawn twice, a dark casing under the line, so that it shows on any grey. Nothing where `d` is empty. */
export function Cased({ class: name, d }: { readonly class: string; readonly d: string }) {
  if (d === '') return null;
  return (
    <g class={name}>
      <path class="cased" d={d} />
      <path class="line" d={d} />
    </g>
  );
}
