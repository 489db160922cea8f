import type { CsvFault } from '../../log/csvColumns.ts';

/** Why a file was not taken, fault by fault, so that it can be mended. */
export function FaultList({ name, faults }: { readonly name: string; readonly faults: readonly CsvFault[] }) {
  const placed = faults.filter((fault) => fault.row > 0);
  const whole = faults.filter((fault) => fault.row === 0);
  return (
    <div className="notice warn" role="alert">
      <p className="lead">{name} was not taken. Nothing was written.</p>
      {placed.length === 0 ? null : (
        <>
          <p>Mend this in the file, save it, and choose it again. Row 1 is the row with the column names.</p>
          <table className="figures">
            <thead>
              <tr>
                <th scope="col">Row</th>
                <th scope="col">Column</th>
                <th scope="col">What is wrong</th>
              </tr>
            </thead>
            <tbody>
              {placed.map(({ row, column, reason }) => (
                <tr key={`${row} ${column} ${reason}`}>
                  <td>{row}</td>
                  <td>{column ?? 'the whole row'}</td>
                  <td>{reason}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
      {whole.map(({ reason }) => (
        <p key={reason}>{reason}</p>
      ))}
    </div>
  );
}
