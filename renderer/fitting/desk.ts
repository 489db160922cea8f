import { addDays, isoWeekName } from '../basics/days.ts';
import { asError } from '../basics/errors.ts';
import type { RoundId, ShooterId } from '../basics/ids.ts';
import type { Probability, Seconds } from '../basics/units.ts';
import { othersIn } from '../games/gameOn.ts';
import { gameOutcome } from '../games/played.ts';
import { EMPTY_BOOK, type Book, type Round } from '../log/book.ts';
import { forecastScoreInSteps } from '../stats/forecastScore.ts';
import type { Change } from '../stats/model/chokeIndex.ts';
import { changeBetween } from '../stats/model/indexOf.ts';
import type { ModelData } from '../stats/model/modelData.ts';
import { type StudyFit, studyInSteps } from '../stats/study.ts';
import type { ChangeAsk, StudyOf } from '../stats/studyAsk.ts';
import { whatHangsInSteps } from '../store/whatHangs.ts';
import { LeanRounds } from './leanRounds.ts';
import type { Answer, News, Question, Reply, Said } from './messages.ts';

/** What the desk needs of the worker it sits in. */
export interface DeskHost {
  readonly reply: (reply: Reply) => void;
  /** A steady clock. */
  readonly now: () => Seconds;
  /** Lets messages that have come in be heard. */
  readonly breathe: () => Promise<void>;
}

/** What changes between weeks are worked out from. Of the data only its weeks: the rest is megabytes. */
interface LastStudy extends Pick<StudyFit, 'posterior'>, Pick<ModelData, 'weeks'>, StudyOf {}

/** Work is done in stretches of about this long; then messages are heard. */
const STRETCH: Seconds = 0.015;

/** Answers questions about the records it was told of; a long one gives way to whatever comes next. */
export class Desk {
  readonly #host: DeskHost;
  readonly #records = new Map<ShooterId, Map<RoundId, Round>>();
  readonly #lean = new LeanRounds();
  /** The latest study, and what it was asked for. */
  #last: LastStudy | null = null;
  /** Counts what was begun, so that work knows when it has been overtaken. */
  #turn = 0;

  constructor(host: DeskHost) {
    this.#host = host;
  }

  hear(said: Said): void {
    switch (said.say) {
      case 'news':
        this.#note(said);
        return;
      case 'rest':
        this.#turn += 1;
        return;
      case 'ask':
        void this.#answer(said.number, said.question);
        return;
    }
  }

  #note({ shooter, changed, gone }: News): void {
    const record = this.#records.get(shooter) ?? new Map<RoundId, Round>();
    for (const round of changed) record.set(round.id, this.#lean.made(round));
    for (const id of gone) record.delete(id);
    this.#records.set(shooter, record);
  }

  async #answer(number: number, question: Question): Promise<void> {
    try {
      const answer = await this.#work(number, question);
      this.#host.reply({ number, is: 'answer', answer });
    } catch (error) {
      this.#host.reply({ number, is: 'failure', detail: asError(error).message });
    }
  }

  async #work(number: number, question: Question): Promise<Answer> {
    const { ask } = question;
    switch (ask) {
      case 'study': {
        const { shooter, mix, pressure, hyper } = question.of;
        const options = { mix, ...(pressure && { pressure }), ...(hyper && { hyper }) };
        const fit = await this.#run(number, studyInSteps(this.#roundsOf(shooter), options));
        if (fit) {
          const { posterior, data } = fit;
          this.#last = { posterior, weeks: data.weeks, shooter, mix, pressure };
        }
        return { ask, content: fit?.study ?? null };
      }
      case 'forecasts': {
        const book = this.#book();
        const rounds = this.#roundsOf(question.shooter);
        const options = { gameOutcome: (round: Round) => gameOutcome(round, othersIn(book, round)) };
        return { ask, content: await this.#run(number, forecastScoreInSteps(rounds, options)) };
      }
      case 'hangs': {
        const { rounds } = this.#book();
        return { ask, content: await this.#run(number, whatHangsInSteps(rounds, question.shooter)) };
      }
      case 'change':
        return { ask, content: this.#change(question.of) };
    }
  }

  /** Runs steps in stretches. @returns null where something else was begun meanwhile */
  async #run<T>(number: number, steps: Generator<Probability, T>): Promise<T | null> {
    this.#turn += 1;
    const turn = this.#turn;
    let until = this.#host.now() + STRETCH;
    for (;;) {
      const step = steps.next();
      if (step.done) return step.value;
      if (this.#host.now() < until) continue;
      this.#host.reply({ number, is: 'progress', share: step.value });
      // oxlint-disable-next-line no-await-in-loop
      await this.#host.breathe();
      if (turn !== this.#turn) return null;
      until = this.#host.now() + STRETCH;
    }
  }

  #change({ shooter, mix, pressure, from, to }: ChangeAsk): Change | null {
    if (!this.#last?.posterior || this.#last.shooter !== shooter) return null;
    const { weeks, posterior } = this.#last;
    const last = [this.#last.mix, this.#last.pressure];
    if (JSON.stringify(last) !== JSON.stringify([mix, pressure])) return null;
    const names = Array.from({ length: weeks.count }, (_, week) =>
      isoWeekName(addDays(weeks.first, 7 * week)),
    );
    const [first, second] = [names.indexOf(from), names.indexOf(to)];
    return first === -1 || second === -1 ? null : changeBetween({ weeks }, posterior, first, second);
  }

  /** Every round it was told of, whoever shot it. */
  #book(): Book {
    const rounds = [...this.#records.values()].flatMap((record) => [...record]);
    return { ...EMPTY_BOOK, rounds: new Map(rounds) };
  }

  #roundsOf(shooter: ShooterId): Round[] {
    return [...(this.#records.get(shooter)?.values() ?? [])];
  }
}
