import { byText } from '../basics/order.ts';
import type { IsoDate } from '../basics/units.ts';
import type { Round } from '../log/book.ts';
import { roundTally } from '../log/roundCells.ts';
import { dayTallies, type DayTally } from './dayTallies.ts';
import { oldestThatCounts } from './lately.ts';
import { placedSessions } from './model/sessionOrder.ts';

interface Day {
  readonly date: IsoDate;
  readonly rounds: Round[];
  /** In the order they were shot; worked out when asked for. */
  inOrder?: readonly Round[];
  /** All rounds of the day added up, null without a shot; worked out when asked for. */
  tally?: DayTally | null;
}

/** Some latest rounds, oldest first, and how many with shots on them were passed over in the same stretch. */
export interface Latest {
  readonly rounds: readonly Round[];
  readonly passedOver: number;
}

/**
 * One shooter's rounds, in such an order that what was known before each of many rounds is soon told. Each day is
 * added up once; only days that were not over yet are added up anew.
 */
export class RoundsByDay {
  readonly #days: readonly Day[];

  constructor(rounds: Iterable<Round>) {
    const days = new Map<IsoDate, Day>();
    for (const round of rounds) {
      const day = days.get(round.date);
      if (day) day.rounds.push(round);
      else days.set(round.date, { date: round.date, rounds: [round] });
    }
    this.#days = [...days.values()].toSorted((a, b) => byText(a.date, b.date));
  }

  /** The latest so many rounds that will do. */
  latest(count: number, willDo: (round: Round) => boolean): Latest {
    const found: Round[] = [];
    let passedOver = 0;
    for (const day of this.#days.toReversed()) {
      for (const round of inOrder(day).toReversed()) {
        if (found.length === count) return { rounds: found.toReversed(), passedOver };
        if (willDo(round)) found.push(round);
        else if (roundTally(round).attempts > 0) passedOver += 1;
      }
    }
    return { rounds: found.toReversed(), passedOver };
  }

  /**
   * What a forecast for a round could rest on, in the order of the days: for a round shot in the app the rounds that were
   * in the book when it was started, as the app itself goes by; for one from a file, all of which came in at once, the
   * rounds of earlier days and the earlier ones of its own session.
   */
  talliesBefore(round: Round): DayTally[] {
    const oldest = oldestThatCounts(round.date);
    const tallies: DayTally[] = [];
    for (const day of this.#days) {
      if (day.date < oldest || day.date > round.date) continue;
      const before = day.rounds.filter((other) => cameBefore(other, round, day));
      const tally = before.length === day.rounds.length ? wholeDay(day) : dayTallies(before)[0];
      if (tally) tallies.push(tally);
    }
    return tallies;
  }
}

function cameBefore(other: Round, round: Round, day: Day): boolean {
  if (!round.imported) return other.startedAt < round.startedAt;
  if (other.date !== round.date) return true;
  if (other.session !== round.session) return false;
  const order = inOrder(day);
  return order.indexOf(other) < order.indexOf(round);
}

function inOrder(day: Day): readonly Round[] {
  day.inOrder ??= placedSessions(day.rounds).flatMap((session) => session.map(({ round }) => round));
  return day.inOrder;
}

function wholeDay(day: Day): DayTally | null {
  day.tally ??= dayTallies(day.rounds)[0] ?? null;
  return day.tally;
}
