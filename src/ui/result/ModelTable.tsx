import type { Table } from '../../report/table';
import { Wide } from './Wide';

/** A table of finished texts; nothing where it has no row. */
export function ModelTable({ table }: { readonly table: Table }) {
  const { caption, columns, rows } = table;
  if (rows.length === 0) return null;
  return (
    <Wide name={caption}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ title, kind }) => (
              <th key={title} scope="col" class={kind === 'number' ? 'number' : ''}>
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <tr key={index}>
              {columns.map(({ title, kind }, at) =>
                kind === 'head' ? (
                  <th key={title} scope="row">
                    {row[at]}
                  </th>
                ) : (
                  <td key={title} class={kind === 'number' ? 'number' : 'words'}>
                    {row[at]}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}
