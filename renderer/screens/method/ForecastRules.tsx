import type { ForecastScore } from '../../stats/forecastScore.ts';
import { LATEST_SCORED, LEAST_DAYS, LEAST_ROUNDS } from '../../store/fixedNumbers.ts';
import { calibrationWords } from '../result/forecastScoreWords.ts';
import { Part, Term, Yours } from './Part.tsx';

/** What is said before a round, and how it is held against what came of it. */
export function ForecastRules({ score }: { readonly score: ForecastScore | null }) {
  return (
    <Part title="The forecast before a round">
      <p>
        From your shots of the last half year, relaxed and pressured, comes a chance for every number of makes
        on the card. A shot of a month ago counts half as much as one of today; spots tell of their
        neighbours; good and bad days are reckoned with. Earlier rounds of today count with the rest, but not
        as a sign of a good or a bad day. The span is as narrow as it can be with no more than one round in
        ten below it and one in ten above, so that four in five end inside, and a few more since makes are
        whole.
      </p>
      <p>
        Nothing of it is stored. For your latest {LATEST_SCORED} rounds that were shot to the end of the card,
        each forecast is worked out anew from the rounds before it alone, and held against what you made.
        Nothing is read from fewer than {LEAST_ROUNDS} rounds on {LEAST_DAYS} days. Then two things are asked,
        by rules fixed beforehand.
      </p>
      <p>
        The chances of your latest {LATEST_SCORED} marks and {LATEST_SCORED} games stand in the log as they
        were said, and are put together by size: of those said to be one in three, about one in three should
        be won. A round you stopped before it was decided counts for neither side.
      </p>
      <dl className="terms">
        <Term word="Too hopeful, too gloomy">
          Do the results lean to one side of their forecasts? All rounds of a day share its luck, so a day
          counts as one: were the forecasts right, a coin could as well have given each day the other sign.
        </Term>
        <Term word="Too sure, too careful">
          Do fewer rounds end inside than promised, or more? The number is set against the chances the rounds
          were given.
        </Term>
        <Term word="Miss in makes (ranked probability score)">
          How far a forecast was off, with its spread counted: a single number scores its distance from the
          result, and a wide span pays for its width. In the long run nobody gains by saying anything but what
          they believe. The plain guess beside it takes your bare percentage from each spot.
        </Term>
      </dl>
      <p className="quiet">
        Right forecasts are called wrong one time in twenty at most. Whoever looks after every round will see
        that happen now and then, and see it pass.
      </p>
      {score ? <Yours>{calibrationWords(score)}</Yours> : null}
    </Part>
  );
}
