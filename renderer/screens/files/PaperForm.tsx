import { COLUMNS } from '../../log/csvColumns.ts';
import { SHOT_KINDS, SPOTS } from '../../court/spots.ts';

const ROWS = Array.from({ length: 20 }, (_, row) => row);

/** The form for the court. It stands on printed paper alone. */
export function PaperForm() {
  return (
    <section className="paper-form" aria-label="Form for the court">
      <h2>Shooting record</h2>
      <p>
        One row for each round, spot and kind of shot. Decide relaxed or pressured before the first shot.
        First: shots already taken today. Nerves: 0 to 10, asked before the round. Stop when something hurts.
      </p>
      <table>
        <thead>
          <tr>
            {COLUMNS.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {ROWS.map((row) => (
            <tr key={row}>
              {COLUMNS.map((column) => (
                <td key={column}>&nbsp;</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        Spots: {SPOTS.join(', ')}, or your own. Shots: {SHOT_KINDS.join(', ')}. Condition: relaxed, pressured.
      </p>
    </section>
  );
}
