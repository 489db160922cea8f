import { HIGHEST_LEVEL } from '../../pressure/ingredients.ts';
import { KNOTS, PRESSURE, STILL_PULLED } from '../../store/fixedNumbers.ts';
import { pointsWords, twoPlaces } from '../numberWords.ts';
import { listed } from '../parts/listed.ts';
import type { Index } from '../studyParts.ts';
import { Part, Term, Yours } from './Part.tsx';
import { pointsAtHalf } from './pointsAtHalf.ts';

/** Shots after which the curve of a session may bend; the first knot is its start. */
const BENDS = KNOTS.slice(1).map(String);

/** The model, piece by piece. */
export function ModelTerms({ index }: { readonly index: Index | null }) {
  return (
    <Part title="The model, piece by piece">
      <p>
        Every make and miss is taken as a coin that falls with some chance. The chance is put together from
        the pieces below, and all pieces are found at once, so that none is credited with what another did.
      </p>
      <dl className="terms">
        <Term word="Log-odds">
          The scale on which the pieces are added. A step of 0.1 on it is about 2.5 points for a shooter at 50
          % and 1 point at 90 %. The same loss in log-odds is therefore fewer points for a better shooter, and
          so a ratio stands beside the points.
          {index ? (
            <Yours>
              pressure adds {twoPlaces(index.logit.value)} in log-odds, from {twoPlaces(index.logit.low)} to{' '}
              {twoPlaces(index.logit.high)}.
            </Yours>
          ) : null}
        </Term>
        <Term word="Spots and kinds of shot">
          Every spot, and every kind of shot, is easier or harder by an amount of its own.
          {index ? (
            <Yours>
              {index.places.length === 1 ? 'one place' : `${index.places.length} places`} in your mix.
            </Yours>
          ) : null}
        </Term>
        <Term word="Warming up and tiring">
          The first shots of a session and the late ones differ from those in between (Anshel and Wrisberg,
          1993, for the first). The curve may bend after shots {listed(BENDS)}, since its true shape is not
          known. The drop is asked for a shooter who is warm and not yet tired.
        </Term>
        <Term word="Skill, week by week (a random walk)">
          Each week’s skill is last week’s plus a small step up or down. So getting better over a season is
          not mistaken for calm nerves.
        </Term>
        <Term word="Good and bad days (a random effect)">
          Every session has a luck of its own, relaxed and pressured alike. One day can therefore never
          decide.
        </Term>
        <Term word="The pressure effect">
          What pressure adds or takes: one amount for you, and on top what the level brings (how many
          ingredients are on, 0 to {HIGHEST_LEVEL}), what each ingredient brings (the clock, the crowd noise,
          something on the line), and what each spot brings. It may move slowly over the weeks, since practice
          under pressure helps (Low and others, 2021; Oudejans and Pijpers, 2009), and every week and day adds
          a little of its own.
          {index?.change ? (
            <Yours>
              from the first week to the last the drop moved by {pointsWords(index.change.points)}.
            </Yours>
          ) : null}
        </Term>
        <Term word="Pulling together (partial pooling, shrinkage)">
          Three of four from one corner prove little. Each spot, week and ingredient is pulled towards what
          the others say, the more the fewer its shots (Efron and Morris, 1977). That is why the figures by
          spot lie closer together than the bare counts.
        </Term>
        <Term word="The prior: what is believed before the first shot">
          A drop and a gain are equally likely, so that nobody is accused by a guess. Two shooters in three
          are taken to lie within {pointsAtHalf(PRESSURE.sd)} points of none at a make rate of 50 %. What is
          published fits in there: 5 to 10 points in the last seconds of close games (Cao, Price and Stone,
          2011); 5.8, 3.1, 2.3 and 2.1 points in four leagues (Toma, 2017). With 25 shots of each kind this
          belief still decides most of the answer; from some {STILL_PULLED} pressured shots on your shots
          decide.
        </Term>
      </dl>
    </Part>
  );
}
