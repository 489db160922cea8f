import { parseIsoDate } from '../basics/days.ts';
import type { IsoDate } from '../basics/units.ts';
import { isShotKind, SHOT_KINDS, spotByName, type ShotKind, type SpotName } from '../court/spots.ts';
import type { Column } from './csvColumns.ts';
import type { Condition } from './events.ts';

/** One row of a record file: one spot and kind of shot in one round. */
export interface CsvRow {
  /** Row as a spreadsheet counts. */
  readonly row: number;
  readonly date: IsoDate;
  readonly session: string;
  readonly round: string;
  readonly condition: Condition;
  readonly game: string;
  readonly spot: SpotName;
  readonly shot: ShotKind;
  readonly first: number | null;
  readonly makes: number;
  readonly attempts: number;
  readonly nerves: number | null;
  readonly shooter: string;
  readonly note: string;
}

type Fields = Readonly<Record<Column, string>>;
type Fault = (column: Column, reason: string) => void;

const WHOLE = /^\d{1,6}$/;
const DECIMAL = /^\d{1,2}(\.\d{1,3})?$/;
const NAME_LENGTH = 200;
/** Most characters in a text of the shooter's own. */
export const TEXT_LENGTH = 2000;

/** Reads the fields of one row; every fault found goes to `fault`, and then the result is null. */
export function readRow(row: number, fields: Fields, report: Fault): CsvRow | null {
  let sound = true;
  const fault: Fault = (column, reason) => {
    sound = false;
    report(column, reason);
  };

  const date = fields.date;
  if (parseIsoDate(date) === null) {
    fault('date', `${shown(date)} is no calendar day. Write it as 2026-11-25.`);
  }
  const condition = fields.condition;
  if (condition !== 'relaxed' && condition !== 'pressured') {
    fault('condition', `${shown(condition)} is neither relaxed nor pressured.`);
  }
  const shot = fields.shot;
  if (!isShotKind(shot)) fault('shot', `${shown(shot)} is none of ${SHOT_KINDS.join(', ')}.`);
  for (const column of ['session', 'round', 'spot', 'shooter'] as const) {
    if (fields[column] === '') fault(column, 'This field is empty. Every row needs it.');
    else if (fields[column].length > NAME_LENGTH) fault(column, `Longer than ${NAME_LENGTH} characters.`);
  }
  for (const column of ['game', 'note'] as const) {
    if (fields[column].length > TEXT_LENGTH) fault(column, `Longer than ${TEXT_LENGTH} characters.`);
  }

  const whole = (column: Column): number => {
    if (WHOLE.test(fields[column])) return Number(fields[column]);
    fault(column, `${shown(fields[column])} is no whole number from 0 up.`);
    return 0;
  };
  const first = fields.first === '' ? null : whole('first');
  const makes = whole('makes');
  const attempts = whole('attempts');
  if (sound && attempts === 0) fault('attempts', 'No attempts. Leave the row out.');
  if (sound && makes > attempts) fault('makes', `${makes} makes of ${attempts} attempts cannot be.`);

  const nerves = fields.nerves === '' ? null : Number(fields.nerves);
  if (nerves !== null && (!DECIMAL.test(fields.nerves) || nerves > 10)) {
    fault('nerves', `${shown(fields.nerves)} is no rating from 0 to 10. Leave it empty if nobody asked.`);
  }

  if (!sound) return null;
  const { session, round, game, spot, shooter, note } = fields;
  return {
    row,
    date,
    session,
    round,
    condition: condition as Condition,
    game,
    // `Left corner` is the left corner; whatever is no standard spot is one of the shooter's own.
    spot: spotByName(spot) ?? spot,
    shot: shot as ShotKind,
    first,
    makes,
    attempts,
    nerves,
    shooter,
    note,
  };
}

function shown(field: string): string {
  const short = field.length > 40 ? `${field.slice(0, 40)}…` : field;
  return field === '' ? 'An empty field' : `"${short}"`;
}
