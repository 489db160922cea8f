import { LEAST_DOUBLES, LEAST_LEVERAGE, LEVERAGE_PRIOR_SD, MOST_LEVERAGE } from '../../store/fixedNumbers.ts';
import type { WhatHangs } from '../../store/whatHangs.ts';
import { casesWords, chanceWords, dropSpan, pointsWords, twoPlaces } from '../numberWords.ts';
import { Part, Term, Yours } from './Part.tsx';
import { pointsAtHalf } from './pointsAtHalf.ts';

/** What the shot loses when much hangs on it, and how that is told from everything else. */
export function Hanging({ hangs }: { readonly hangs: WhatHangs | null }) {
  const leverage = hangs?.leverage.drop ?? null;
  const doubles = hangs?.doubles.drop ?? null;
  return (
    <Part title="When much hangs on the shot">
      <p>
        Some shots of a game decide it, others hardly matter. Two things are asked of your pressured shots:
        whether you are worse when more hangs on them, and whether you are worse on balls that a coin made
        count double. Nothing is said from fewer than {LEAST_LEVERAGE.shots} shots in {LEAST_LEVERAGE.rounds}{' '}
        rounds, or from fewer than {LEAST_DOUBLES} double balls.
      </p>
      <dl className="terms">
        <Term word="What hangs on a shot (leverage)">
          The chance to win after a make minus the chance after a miss, worked out from the rule of the game
          for every place it can come to. Your make rates, and how fast you shoot where a clock runs, are
          those your record showed before the round: what the round itself tells of your day stays out, or a
          good round would change what hung on its own shots. Shots after a game was decided are left out; of
          the rest the latest {MOST_LEVERAGE} count.
        </Term>
        <Term word="Good and bad rounds (a random effect)">
          Every round has a luck of its own, found together with all the rest; so have spots, and the number
          of the shot in its round. It would seem simpler to compare the shots inside each round, but that
          misleads. In a game of makes in a row more hangs on a shot just after good ones, and those good ones
          are in the round’s own mean, beside which the next shot then looks poor. Known of short series since
          Nickell (1981). In simulated games in which nothing was lost, comparing inside rounds read a loss of
          up to 3 points for each usual step of leverage; this way read 0.2 or less.
          {leverage ? (
            <Yours>
              a good or a bad round lies about {pointsAtHalf(leverage.roundSd)} points from a usual one (
              {twoPlaces(leverage.roundSd)} in log-odds).
            </Yours>
          ) : null}
        </Term>
        <Term word="What is believed before the first shot (the prior)">
          No loss and no gain are favoured. Two shooters in three are taken to lie within{' '}
          {pointsAtHalf(LEVERAGE_PRIOR_SD)} points of none for each usual step of leverage; that pulls short
          records towards 0.
          {leverage ? (
            <Yours>
              {pointsWords(leverage.mostAgainstLeast.points)} between the third with most and the third with
              least, from {dropSpan(leverage.mostAgainstLeast)}; the chance that anything is lost is{' '}
              {chanceWords(leverage.probability)}.
            </Yours>
          ) : null}
        </Term>
        <Term word="Double balls, drawn by coin (a randomised trial)">
          In such racks each ball counts double by the toss of a coin, one in five, drawn before the round.
          You know it as you shoot, but nothing else tells a double ball from a single one. So the difference
          of their make rates is what doubling does to you, without bias. Balls from the same spot and the
          same place in the rack are compared (weights of Mantel and Haenszel, 1959; span of Newcombe, 1998).
          {doubles ? (
            <Yours>
              {pointsWords(doubles.points)}, from {dropSpan(doubles)}.
            </Yours>
          ) : null}
        </Term>
        <Term word="The exact test of the coin">
          If doubling did nothing, every ball would have gone in or not whatever the coin said. Of all ways in
          which the coin could have picked as many balls at each place, the test counts those with a result at
          least as unlikely (for a single place this is the exact test of Fisher, 1935).
          {doubles ? <Yours>{casesWords(doubles.chance.either)}.</Yours> : null}
        </Term>
      </dl>
      <p className="quiet">
        Whoever looks after every round will sooner or later see luck pass for a difference. The first figure
        describes; what the coin says is a fair test. What a stake of your own does beyond the score, neither
        can say.
      </p>
    </Part>
  );
}
