const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
};

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

function plainExponent(raised: string): string {
  return [...raised].map((c) => (c === '⁻' ? '-' : String(SUPERSCRIPTS.indexOf(c)))).join('');
}

/** Typographic spaces, minus signs, primes, fractions and powers, written with the plain characters for them. */
export function plainText(text: string): string {
  return text
    .replace(/[\s\u00a0\u2000-\u200a\u202f\u205f\u3000]+/g, ' ')
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚]/g, (c) => ` ${FRACTIONS[c] ?? ''}`)
    .replace(/[⁄∕]/g, '/')
    .replace(/[\u2010\u2011\u2212]/g, '-')
    .replace(/[″“”]|''/g, '"')
    .replace(/[′’]/g, "'")
    .replace(/''/g, '"')
    .replace(/º|˚/g, '°')
    .replace(/ ?[×x*·⋅] ?10(?:\^([-+]?\d{1,3})|([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]{1,4}))/g, (_, hat, raised) =>
      raised === undefined ? `e${hat}` : `e${plainExponent(raised)}`,
    )
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/ per /g, '/')
    .replace(/(?<=[a-z'"]) ?\/ ?(?=[a-z])/gi, '/')
    .replace(/ +/g, ' ')
    .replace(/^([-+]) /, '$1')
    .trim();
}
