/** The columns of a record file, in the order they are written. */
export const COLUMNS = [
  'date',
  'session',
  'round',
  'condition',
  'game',
  'spot',
  'shot',
  'first',
  'makes',
  'attempts',
  'nerves',
  'shooter',
  'note',
] as const;
export type Column = (typeof COLUMNS)[number];

/** One fault of a record file, placed so that a person finds it. */
export interface CsvFault {
  /** Row as a spreadsheet counts: the header is row 1. 0 where the whole file is meant. */
  readonly row: number;
  readonly column: Column | null;
  readonly reason: string;
}

/** A record file that cannot be taken. Nothing of it is written. */
export class CsvError extends Error {
  override readonly name = 'CsvError';
  readonly faults: readonly CsvFault[];

  constructor(faults: readonly CsvFault[]) {
    super(faults.map(faultWords).join('\n'));
    this.faults = faults;
  }
}

/** `Row 3, makes: 7 makes of 5 attempts.` */
export function faultWords({ row, column, reason }: CsvFault): string {
  if (row === 0) return reason;
  return column ? `Row ${row}, ${column}: ${reason}` : `Row ${row}: ${reason}`;
}
