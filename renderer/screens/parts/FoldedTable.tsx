interface Props {
  readonly summary: string;
  /** Of the columns, that of the names first. */
  readonly heads: readonly string[];
  readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[];
}

/** The numbers of a chart as a table, closed on the screen and open on paper. */
export function FoldedTable({ summary, ...table }: Props) {
  return (
    <details className="behind">
      <summary>{summary}</summary>
      <FiguresTable label={summary} {...table} />
    </details>
  );
}

/** A plain table of figures. */
export function FiguresTable({ label, heads, rows }: Omit<Props, 'summary'> & { readonly label: string }) {
  return (
    <div className="scroll" role="region" aria-label={label} tabIndex={0}>
      <table className="figures">
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, cells }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {cells.map((cell, at) => (
                <td key={heads[at + 1]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
