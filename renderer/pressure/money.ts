/*
 * Stakes are never money. No word list knows every coin, so this catches what people usually write, and the form says the
 * rest. Words that mean something else as well ("pound", "crown", "lire") count only beside an amount.
 */

/** Money, whatever stands beside it. */
const MONEY_WORDS = [
  'money|cash|dollars?|bucks|quid|euros?|cents?|pence|tenner|fiver|banknotes?|bitcoins?|crypto|rupees?',
  "geld|bargeld|taschengeld|argent liquide|du fric|de l[’']argent|dinero|efectivo|soldi|denaro|contanti",
  'dinheiro|reais|pengar|penge|penger|rahaa|kroner|kronor|pieniądze|pieniędzy|złot[a-zy]*|zlot[a-zy]*',
  'peníze|korun[ay]?|pénz|forint|χρήματα|ευρώ|деньги|денег|рубл[а-я]*|гривн[а-я]*|евро|доллар[а-я]*',
  'نقود|مال|دولار|כסף|पैसे|पैसा|रुपये',
].join('|');

/** Units that are other words too. */
const UNITS = [
  'pounds?|penny|pennies|grand|francs?|franken|rappen|pesos?|liras?|lire|crowns?|kč|zł|lei|leva?|yen|yuan',
  'rand|rubles?|dinars?|dirhams?|riyals?|shekels?|öre|øre',
].join('|');

/** Codes of ISO 4217 that are no everyday words, and what is written like one. */
const CODES = [
  'eur|usd|gbp|chf|sek|nok|dkk|pln|czk|huf|bgn|jpy|cny|rmb|inr|idr|aud|nzd|brl|mxn|clp|zar|uah|krw|sgd|hkd',
  'btc|eth|kr|fr|tl',
].join('|');

const AMOUNT_WORDS = [
  'one|two|three|five|ten|fifteen|twenty|fifty|hundred|thousand|zwei|drei|fünf|zehn|zwanzig|fünfzig|hundert',
  'deux|trois|cinq|dix|vingt|cinquante|dos|tres|cinco|diez|veinte|cincuenta|due|tre|cinque|dieci|venti',
  'dez|vinte|vijf|tien|twintig|fem|tio|tjugo|ti|tyve',
].join('|');

const AMOUNT = String.raw`(?:\d[\d.,’']*|${AMOUNT_WORDS})`;
const START = String.raw`(?<![\p{L}\p{N}])`;
const END = String.raw`(?![\p{L}\p{N}])`;
const PAYS = 'pays?|zahlt|bezahlt|paie|paga|betaalt|betaler|betalar|платит';

const PATTERNS: readonly RegExp[] = [
  // Any currency sign of Unicode.
  /\p{Sc}/u,
  new RegExp(`${START}(?:${MONEY_WORDS})${END}`, 'iu'),
  new RegExp(String.raw`${START}${AMOUNT}\s*-?\s*(?:${UNITS}|${CODES})${END}`, 'iu'),
  new RegExp(String.raw`${START}(?:${CODES})\.?\s*\d`, 'iu'),
  // "Loser pays 5": an amount of nothing else.
  new RegExp(String.raw`${START}(?:${PAYS})\s+${AMOUNT}(?:\s+each)?\s*[.!]?$`, 'iu'),
  /お金|現金|现金|钱|錢|현금|\d\s*[円元원]/u,
];

/** Whether a stake reads like money. */
export function looksLikeMoney(stake: string): boolean {
  const text = stake.normalize('NFC').trim();
  return PATTERNS.some((pattern) => pattern.test(text));
}
