import { COLUMNS } from '../../log/csvColumns.ts';
import { emptyForm } from '../../store/recordFiles.ts';
import { COLUMN_WORDS, EXAMPLE } from './columnWords.ts';
import { saveFile } from './saveFile.ts';

/** How to keep records on paper, and type them in later. */
export function PaperRecords() {
  return (
    <section className="panel" aria-labelledby="paper-records">
      <h2 id="paper-records">On paper first?</h2>
      <p>
        Print the form, or write the same columns into any notebook. Later, type it into a spreadsheet, one
        row for each round, spot and kind of shot, save it as CSV and bring it in above.
      </p>
      <div className="row">
        <button type="button" className="button" onClick={() => window.print()}>
          Print a form for the court
        </button>
        <button type="button" className="button" onClick={() => saveFile(emptyForm())}>
          Download the empty form
        </button>
      </div>
      <p>
        An example: on 25 November 2026, first visit of the day, Ines shoots her second round, with pressure
        on and after 25 relaxed shots. Five catch-and-shoot threes from the left corner, 3 go in. Her nerves
        before it: 6 of 10. In the file, that is one row under the column names:
      </p>
      <pre className="example">
        {COLUMNS.join(',')}
        {'\n'}
        {COLUMNS.map((column) => EXAMPLE[column]).join(',')}
      </pre>
    </section>
  );
}

/** Every column of a record file, and what may stand in it. */
export function ColumnTable() {
  return (
    <section className="panel" aria-labelledby="columns-explained">
      <h2 id="columns-explained">The columns</h2>
      <table className="figures">
        <thead>
          <tr>
            <th scope="col">Column</th>
            <th scope="col">
              <TwoWords one="What it says" other="What may stand there" />
            </th>
          </tr>
        </thead>
        <tbody>
          {COLUMNS.map((column) => (
            <tr key={column}>
              <th scope="row">
                <code>{column}</code>
              </th>
              <td>
                <TwoWords one={COLUMN_WORDS[column].what} other={COLUMN_WORDS[column].may} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">
        Rows with the same shooter, date, session and round are one round. A field with a comma in it stands
        in "quotation marks". The names of the columns stay as they are; their order may change.
      </p>
    </section>
  );
}

/** Two things in one cell, side by side where there is room. */
function TwoWords({ one, other }: { readonly one: string; readonly other: string }) {
  return (
    <span className="two-words">
      <span>{one}</span>
      <span className="quiet">{other}</span>
    </span>
  );
}
