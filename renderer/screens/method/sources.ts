/** Something published that a number or a choice on the page rests on. */
export interface Source {
  readonly authors: string;
  readonly year: number;
  /** Left out where it was not at hand. */
  readonly title?: string;
  /** Journal, volume, pages; left out where it was not at hand. */
  readonly where?: string;
  /** What it gives here. */
  readonly gives: string;
  /** What of this was written down from memory and not looked up again. */
  readonly fromMemory?: string;
}

export const SOURCES: readonly Source[] = [
  {
    authors: 'M. H. Anshel and C. A. Wrisberg',
    year: 1993,
    where: 'Journal of Sport & Exercise Psychology 15, 290–303',
    gives:
      'after a rest the first tries are worse (70 skilled tennis players), so the place of a shot in its session is reckoned with',
  },
  {
    authors: 'R. F. Baumeister',
    year: 1984,
    title:
      'Choking under pressure: self-consciousness and paradoxical effects of incentives on skillful performance',
    where: 'Journal of Personality and Social Psychology 46(3), 610–620',
    gives: 'what pressure is: whatever raises the importance of doing well',
  },
  {
    authors: 'G. W. Brier',
    year: 1950,
    title: 'Verification of forecasts expressed in terms of probability',
    where: 'Monthly Weather Review 78(1), 1–3',
    gives: 'how to score a chance so that honesty pays',
    fromMemory: 'all of it',
  },
  {
    authors: 'L. D. Brown, T. T. Cai and A. DasGupta',
    year: 2001,
    title: 'Interval estimation for a binomial proportion',
    where: 'Statistical Science 16(2), 101–133',
    gives: 'the spans of bare make rates: Jeffreys’ below 40 shots, Wilson’s from there',
    fromMemory: 'the cut at 40',
  },
  {
    authors: 'Z. Cao, J. Price and D. F. Stone',
    year: 2011,
    where: 'Journal of Sports Economics 12(3), 231–252',
    gives: '5 to 10 points fewer free throws in the last seconds of very close professional games',
  },
  {
    authors: 'C. Czado, T. Gneiting and L. Held',
    year: 2009,
    title: 'Predictive model assessment for count data',
    where: 'Biometrics 65(4), 1254–1261',
    gives: 'where a count lies in its forecast, without tossing for it',
  },
  {
    authors: 'A. P. Dawid',
    year: 1984,
    title: 'Present position and potential developments: the prequential approach',
    where: 'Journal of the Royal Statistical Society A 147, 278–292',
    gives: 'forecasts are judged one after the other, each from what was known before it',
    fromMemory: 'all of it',
  },
  {
    authors: 'B. Efron and C. Morris',
    year: 1977,
    title: 'Stein’s paradox in statistics',
    where: 'Scientific American 236(5), 119–127',
    gives: 'why pulling many small records towards one another makes them truer',
    fromMemory: 'the pages',
  },
  {
    authors: 'E. S. Epstein',
    year: 1969,
    title: 'A scoring system for probability forecasts of ranked categories',
    where: 'Journal of Applied Meteorology 8, 985–987',
    gives: 'the miss in makes: Brier’s score, added up over every mark that could have been set',
  },
  {
    authors: 'R. A. Fisher',
    year: 1935,
    title: 'The Design of Experiments',
    gives: 'a coin makes a comparison fair, and the exact test that goes with it',
    fromMemory: 'all of it',
  },
  {
    authors: 'T. Gneiting, F. Balabdaoui and A. E. Raftery',
    year: 2007,
    title: 'Probabilistic forecasts, calibration and sharpness',
    where: 'Journal of the Royal Statistical Society B 69, 243–268',
    gives: 'a span should be as narrow as it can be and still keep its word',
    fromMemory: 'all of it',
  },
  {
    authors: 'W. R. Low and others',
    year: 2021,
    title: 'Pressure training for performance domains: a meta-analysis',
    where: 'Sport, Exercise, and Performance Psychology 10(1), 149–163',
    gives: 'practice under pressure helps (g = 0.67, 0.43 to 1.12), so the effect may move over the weeks',
  },
  {
    authors: 'W. R. Low and others',
    year: 2022,
    where: 'Journal of Applied Sport Psychology, 710–730',
    gives: 'pressure in practice comes near to that of a game and does not replace it',
  },
  {
    authors: 'N. Mantel and W. Haenszel',
    year: 1959,
    title: 'Statistical aspects of the analysis of data from retrospective studies of disease',
    where: 'Journal of the National Cancer Institute 22(4), 719–748',
    gives: 'how differences from several places are put together',
    fromMemory: 'all of it',
  },
  {
    authors: 'C. Mesagno and D. M. Hill',
    year: 2013,
    title: 'Definition of choking in sport: re-conceptualization and debate',
    where: 'International Journal of Sport Psychology 44(4), 267–277',
    gives: 'not every decrease deserves to be called choking, and so it is not called that here',
  },
  {
    authors: 'NCAA',
    year: 2007,
    title: 'Release of 12 February 2007 on a study of sports wagering among students',
    gives:
      'nearly 45 in 100 had placed their first sports wager in high school or before; that anything of value makes a wager comes from the pages of a university’s compliance office',
  },
  {
    authors: 'R. G. Newcombe',
    year: 1998,
    title:
      'Interval estimation for the difference between independent proportions: comparison of eleven methods',
    where: 'Statistics in Medicine 17, 873–890, method 10',
    gives: 'the span of the drop as shot',
  },
  {
    authors: 'S. Nickell',
    year: 1981,
    title: 'Biases in dynamic models with fixed effects',
    where: 'Econometrica 49(6), 1417–1426',
    gives: 'why shots of a round are not held against the mean of that very round',
    fromMemory: 'all of it',
  },
  {
    authors: 'R. R. D. Oudejans and J. R. Pijpers',
    year: 2009,
    title:
      'Training with anxiety has a positive effect on expert perceptual-motor performance under pressure',
    where: 'Quarterly Journal of Experimental Psychology 62(8), 1631–1647',
    gives: 'of 17 expert players only those who had trained under pressure no longer got worse under it',
  },
  {
    authors: 'J. B. Miller and A. Sanjurjo',
    year: 2018,
    title: 'Surprised by the hot hand fallacy? A truth in the law of small numbers',
    where: 'Econometrica 86(6), 2019–2047',
    gives: 'why shots right after a make look worse in short stretches than they are',
  },
  {
    authors: 'M. Stoker, I. Maynard, J. Butt, K. Hays and P. Hughes',
    year: 2019,
    where: 'The Sport Psychologist 33(3), from 221',
    gives:
      'harder demands alone changed neither pressure nor anxiety, being judged and a forfeit did: why there is a ladder of consequences',
    fromMemory: 'that its shooters shot at targets',
  },
  {
    authors: 'M. Toma',
    year: 2017,
    title: 'Missed shots at the free-throw line',
    where: 'Journal of Sports Economics 18(6), 539–559',
    gives: '5.8, 3.1, 2.3 and 2.1 points fewer in the last 30 seconds of tight games, in four leagues',
    fromMemory: 'volume and pages',
  },
  {
    authors: 'J. Turner, A. Ly and P. Grünwald',
    year: 2024,
    title: 'Generic E-variables for exact sequential k-sample tests that allow for optional stopping',
    where: 'Journal of Statistical Planning and Inference',
    gives: 'evidence of the same family as that of the pairs',
    fromMemory: 'all of it',
  },
];
