import { rngFromSeed, seedFromText } from '../../basics/chance.ts';
import { finish, partOf } from '../../basics/steps.ts';
import type { Probability } from '../../basics/units.ts';
import type { UsualPressure } from '../../pressure/ingredients.ts';
import { at } from '../matrix.ts';
import type { ChokeIndex, NoIndex, NoIndexReason } from './chokeIndex.ts';
import { centred } from './centre.ts';
import { type DesignOptions, designOf } from './design.ts';
import { drawStates, FEW_SESSIONS } from './draws.ts';
import { figuresOf } from './indexOf.ts';
import { notesOn, pulledNote } from './indexNotes.ts';
import type { ModelData } from './modelData.ts';
import { type Fitter, fitterOf, type Mode } from './newton.ts';
import type { Spreads } from './priors.ts';
import { type MixChoice, referenceOf } from './reference.ts';
import { DRAWS } from './settings.ts';
import { fixed, integrate, MOST_FITS, type SpreadFit } from './spreads.ts';
import { type Posterior, standardise } from './standardise.ts';
import { usualPressure } from './usualPressure.ts';

export interface FitOptions {
  /** Decides the draws; by default a hash of the data, so that the same record always gets the same answer. */
  readonly seed?: number;
  /** `relaxed` by default. */
  readonly mix?: MixChoice;
  /** What the drop is asked under, kept from some moment on; by default as usual in the whole record. */
  readonly pressure?: UsualPressure;
  /** Spreads of an earlier fit: one quick fit at these instead of learning them anew. */
  readonly hyper?: Spreads;
  /** Draws from the posterior; {@link DRAWS} by default. */
  readonly draws?: number;
  /** Parts of the model to switch, for comparisons. */
  readonly design?: Partial<DesignOptions>;
}

/** An index with the draws it was summed from. */
export interface DropFit {
  readonly index: ChokeIndex | NoIndex;
  /** Null where there is no index. */
  readonly posterior: Posterior | null;
}

/** Below this share of the mix shot under pressure there is no index: most of it would be guesswork. */
const LEAST_SEEN = 0.5;

/** Shares of the work that are done at least, as measured on five years of shots; a fit at known spreads is one of some fifty. */
const DONE = { laidOut: 0.01, fitted: 0.94, centred: 0.96, drawn: 0.97, standardised: 0.99 };
const QUICK_DONE = { laidOut: 0.1, fitted: 0.45, centred: 0.58, drawn: 0.7, standardised: 0.87 };

/**
 * The choke index of one shooter's record, or the reason why there is none.
 *
 * @throws RangeError for a number of draws that is not whole and at least 20
 */
export function fitDrop(data: ModelData, options: FitOptions = {}): DropFit {
  return finish(fitDropInSteps(data, options));
}

/**
 * The same in short steps, for whoever must be free to answer in between.
 *
 * @yields the share of the work that is done at least, 0 to 1
 * @throws RangeError as {@link fitDrop} does
 */
export function* fitDropInSteps(data: ModelData, options: FitOptions = {}): Generator<Probability, DropFit> {
  const { seed = seedOf(data), mix = 'relaxed', draws = DRAWS } = options;
  if (!(Number.isInteger(draws) && draws >= 20)) throw new RangeError(`20 draws or more, not ${draws}`);
  const usual = usualPressure(data);
  const { pressure = usual } = options;
  const reference = referenceOf(data, mix, pressure);
  const seen = reference?.seen ?? 0;
  const none = (reason: NoIndexReason): DropFit => ({
    index: { kind: 'none', reason, seen },
    posterior: null,
  });
  const shots = shotsOf(data);
  if (shots.relaxed === 0) return none('no relaxed shot');
  if (shots.pressured === 0) return none('no pressured shot');
  if (!reference) return none('nothing of the mix');
  if (seen < LEAST_SEEN) return none('too little of the mix under pressure');

  const done = options.hyper ? QUICK_DONE : DONE;
  const design = designOf(data, options.design, pressure);
  const fitter = fitterOf(design);
  const few = design.sessions.count <= FEW_SESSIONS;
  yield done.laidOut;
  const spreads = yield* partOf(fitSpreads(fitter, few, options), done.laidOut, done.fitted);
  yield done.fitted;
  const rng = rngFromSeed(seed);
  // Weighing mends the means of few sessions as well.
  const nodes = few ? spreads.nodes : centred(design, fitter, spreads, rng);
  yield done.centred;
  const drawn = drawStates(design, nodes, draws, rng);
  yield done.drawn;
  const posterior = standardise(data, design, drawn, reference);
  yield done.standardised;
  const figures = figuresOf(data, posterior, reference);
  const index: ChokeIndex = {
    kind: 'index',
    ...figures,
    usual,
    hyper: { mean: spreads.mean, sd: spreads.sd },
    seed,
    pulled: pulledNote(figures),
    notes: notesOn(data, figures),
  };
  return { index, posterior };
}

function* fitSpreads(fitter: Fitter, few: boolean, { hyper }: FitOptions): Generator<Probability, SpreadFit> {
  if (hyper) return fixed(fitter.fit(hyper));
  const steps = integrate(fitter, few ? withOwnRoom : (mode) => mode);
  for (let done = 1; ; done += 1) {
    const step = steps.next();
    if (step.done) return step.value;
    yield Math.min(1, done / MOST_FITS);
  }
}

/** The fitter's room is used again by its next fit; a copy stays. */
function withOwnRoom(mode: Mode): Mode {
  return { ...mode, factors: { ...mode.factors, days: structuredCopy(mode.factors.days) } };
}

function structuredCopy(room: Mode['factors']['days']): Mode['factors']['days'] {
  return { ...room, dayBlocks: room.dayBlocks.slice(), dayCross: room.dayCross.slice() };
}

/** Attempts in each condition. */
export function shotsOf({ cells }: ModelData): { relaxed: number; pressured: number } {
  const shots = { relaxed: 0, pressured: 0 };
  for (let cell = 0; cell < cells.count; cell += 1) {
    shots[cells.pressured[cell] === 1 ? 'pressured' : 'relaxed'] += at(cells.attempts, cell);
  }
  return shots;
}

/** A hash of what was shot, session by session. */
function seedOf({ sessions, cells }: ModelData): number {
  const lines = sessions.dates.map((date, session) => {
    let [makes, attempts, pressured] = [0, 0, 0];
    for (let cell = at(sessions.start, session); cell < at(sessions.start, session + 1); cell += 1) {
      makes += at(cells.makes, cell);
      attempts += at(cells.attempts, cell);
      pressured += at(cells.pressured, cell) * at(cells.attempts, cell);
    }
    return `${date} ${makes} ${attempts} ${pressured}`;
  });
  return seedFromText(lines.join('\n'));
}
