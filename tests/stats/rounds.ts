import type { Cell, Round } from '../../renderer/log/book.ts';
import type { Condition } from '../../renderer/log/events.ts';

/** A finished round with these cells, one count for each. */
export function roundOf(
  condition: Condition,
  cells: readonly Cell[],
  { date = '2026-03-02', session = `s-${date}` }: { date?: string; session?: string } = {},
): Round {
  return {
    id: `${session}-${condition}`,
    shooter: 'shooter',
    session,
    date,
    label: '1',
    startedAt: 0,
    condition,
    game: '',
    stops: cells.map(({ spot, shot, attempts }) => ({ spot, shot, attempts })),
    card: null,
    entry: 'counts',
    first: null,
    nerves: null,
    pair: null,
    pressure: null,
    group: null,
    entries: cells.map(({ makes, attempts }, stop) => ({
      kind: 'count',
      id: `${stop}`,
      at: 0,
      stop,
      makes,
      attempts,
    })),
    state: 'ended',
    clockLeft: null,
    pausedBy: null,
    ending: 'played-out',
    endedAt: null,
    nervesAfter: null,
    effort: null,
    note: '',
    settled: false,
    imported: false,
  };
}

/** Three-point catch-and-shoot from a spot. */
export function three(spot: Cell['spot'], makes: number, attempts: number): Cell {
  return { spot, shot: 'catch', makes, attempts };
}

export function freeThrows(makes: number, attempts: number): Cell {
  return { spot: 'free-throw', shot: 'free-throw', makes, attempts };
}
