import type { Finding } from '../../report/line';
import { LineText } from './LineText';

/** Findings, each under its name. */
export function FindingsList({ findings }: { readonly findings: readonly Finding[] }) {
  return (
    <dl class="findings-list">
      {findings.map(({ name, mark, lines }) => (
        <div key={mark}>
          <dt>{name}</dt>
          <dd data-role={mark}>
            {lines.map((line, index) => (
              <LineText key={index} line={line} />
            ))}
          </dd>
        </div>
      ))}
    </dl>
  );
}
