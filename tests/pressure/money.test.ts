import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { looksLikeMoney } from '../../renderer/pressure/money.ts';
import { FAVOURS } from '../../renderer/pressure/stakes.ts';

describe('a stake that is money', () => {
  it.each([
    '5 euro',
    'five euros',
    'Loser pays 5 €',
    '€5',
    '$ 10',
    '10$ each',
    '£20 note',
    'twenty bucks',
    'Ten quid says you miss',
    'a fiver',
    '50 cents',
    'some cash',
    'CASH',
    'Geld',
    'zehn Franken',
    '20 Fr.',
    'CHF 10',
    'eur 5',
    '100 SEK',
    '100 kr',
    'hundert Kronor',
    'dix francs',
    'de l’argent',
    'mucho dinero',
    '20 pesos',
    'dieci lire',
    'due soldi',
    '5 reais',
    'R$5',
    'vijf euro',
    '50 złotych',
    '20 zł',
    '100 korun',
    '100 рублей',
    '500円',
    '10元',
    '₩5000',
    '5 pounds',
    '0.01 BTC',
    'Loser pays 5',
    'Verlierer zahlt 5 each',
    '100 rupees',
    '₹100',
  ])('%s', (stake) => {
    expect(looksLikeMoney(stake)).toBe(true);
    expect(looksLikeMoney(stake.toUpperCase())).toBe(true);
  });

  it('is found wherever it stands', () => {
    // A letter or a figure right beside a word makes it another word.
    const beside = fc.stringMatching(/^[a-z .,]*$/).map((text) => text.slice(0, 30));
    fc.assert(
      fc.property(
        beside,
        beside,
        fc.constantFrom('€', '5 euro', 'cash', '10 pounds'),
        (before, after, sum) => {
          expect(looksLikeMoney(`${before} ${sum} ${after}`)).toBe(true);
        },
      ),
    );
  });
});

describe('a stake that is none', () => {
  it.each([
    ...FAVOURS,
    'Loser buys lunch',
    'Loser does the washing-up',
    'Loser buys the coffee',
    'Loser pays for lunch',
    'A round of lemonade',
    'Loser carries the balls',
    'Loser sings',
    'Loser shoots from 10 ft',
    'Two songs of your choice',
    'One real apology',
    'Whoever won 2 of 3 picks the film',
    'Top 5 choose first',
    'Try 5 with the left hand',
    'Ron 5, me 4: Ron picks',
    'Verlierer kocht für drei',
    'Abwasch',
    'Le perdant ramasse 10 balles',
    'El que pierde friega para todos',
    'Den som taper rydder',
    'A crown of paper',
    'Loser reads a poem',
    'Best of 3',
    '',
    '  ',
  ])('%j', (stake) => {
    expect(looksLikeMoney(stake)).toBe(false);
  });
});
