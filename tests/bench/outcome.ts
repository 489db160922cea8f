/** How large a figure may be. `agreed`: what the app must reach; `own`: a guard of ours, with room, against growing slow. */
export interface Limit {
  readonly on: 'figure' | 'ratio';
  readonly most: number;
  readonly by: 'agreed' | 'own';
}

/** One figure, with the rival that was measured in the same run. The smaller the better. */
export interface Outcome {
  readonly what: string;
  readonly unit: string;
  readonly figure: number;
  readonly rival: { readonly what: string; readonly figure: number };
  /** How often each of the two was measured, or over how much. */
  readonly n: string;
  /** Null for a figure that is there to be compared with. */
  readonly limit: Limit | null;
}

export function ratioOf({ figure, rival }: Outcome): number {
  return figure / rival.figure;
}

export function passes(outcome: Outcome): boolean {
  const { limit, figure } = outcome;
  return limit === null || (limit.on === 'figure' ? figure : ratioOf(outcome)) <= limit.most;
}

/** The outcome in one line of words. */
export function sentence(outcome: Outcome): string {
  const { what, unit, figure, rival, n } = outcome;
  const compared = `${rival.what} ${round(rival.figure)} ${unit}, ratio ${round(ratioOf(outcome))}`;
  return `${what}: ${round(figure)} ${unit}; ${compared}; n = ${n}; ${verdict(outcome)}`;
}

/** All outcomes as a table in plain text. */
export function table(outcomes: readonly Outcome[]): string {
  const rows = [
    ['what', 'figure', 'rival', 'ratio', 'limit', 'n', ''],
    ...outcomes.map((outcome) => [
      outcome.what,
      `${round(outcome.figure)} ${outcome.unit}`,
      `${round(outcome.rival.figure)} ${outcome.unit}`,
      round(ratioOf(outcome)),
      limitWords(outcome),
      outcome.n,
      outcome.limit === null ? '' : passes(outcome) ? 'pass' : 'MISSED',
    ]),
  ];
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

function verdict(outcome: Outcome): string {
  if (outcome.limit === null) return 'no limit';
  return `${passes(outcome) ? 'pass' : 'MISSED'} (${limitWords(outcome)})`;
}

function limitWords({ limit, unit }: Outcome): string {
  if (limit === null) return '–';
  const most = limit.on === 'figure' ? `${round(limit.most)} ${unit}` : `ratio ${round(limit.most)}`;
  return limit.by === 'own' ? `own: ${most}` : most;
}

/** Three figures that count, and no more digits than that after the point. */
function round(value: number): string {
  if (!Number.isFinite(value)) return '–';
  return Number(value.toPrecision(value >= 100 ? Math.ceil(Math.log10(value + 1)) : 3)).toString();
}
