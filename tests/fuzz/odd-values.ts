import fc from 'fast-check';

/** A list written as one text, with broken bars between, which is shorter. */
const listed = (text: string): readonly string[] => text.split('¦');

/** Numbers as nobody writes them, or as a program takes for something else. */
export const ODD_NUMBERS = [
  ...listed(
    '0¦-0¦+0¦00¦1e400¦-1e400¦1e308¦1e-400¦5e-324¦1e21¦-1¦.5¦5.¦1e¦e5¦NaN¦nan¦.nan¦.NaN¦.inf¦-.inf¦' +
      'Infinity¦-Infinity¦0x10¦0o17¦0b1¦1_000¦1,5¦1.250,5¦12,345,000¦1,250¦1/0¦0/0¦1/2¦28 1/2¦28-1/2¦' +
      '½¦28½¦1.2.3¦--1¦+-1¦−¦−1¦٣¦１２¦1e99999¦one¦5\' 3 1/2"¦1e1e1¦12 500¦¾¦1:30¦190:20:30¦2026',
  ),
  '9'.repeat(400),
  `0.${'0'.repeat(350)}1`,
  `${'1'.repeat(30)}/${'7'.repeat(30)}`,
];

/** Units that a setup may have, and what is none. */
const UNITS = listed(
  '¦in¦"¦mm¦cm¦m¦ft¦\'¦yd¦gr¦g¦kg¦lb¦lbs¦lbf¦N¦J¦ft lbf¦gpi¦fps¦m/s¦mph¦km/h¦deg¦°¦moa¦rad¦degF¦' +
    '°C¦K¦hPa¦inHg¦mbar¦%¦g/m¦h¦furlong¦ly¦gr gr¦in^2¦m^-1¦1/m¦in in in¦µm¦Ym¦ym¦o’clock¦\u0000¦in/0',
);

/** Words that stand in files of some kind or other. */
const WORDS = listed(
  'unknown¦rated¦right¦left¦up¦down¦true¦yes¦no¦off¦null¦~¦¦ ¦-¦?¦—¦2026-11-26¦2026-13-45¦' +
    '2024-02-30¦0000-00-00¦-1-1-1¦2026-11-26T00:00:00Z¦yesterday¦12:60¦__proto__¦constructor¦' +
    'toString¦hasOwnProperty¦valueOf¦undefined¦[object Object]¦length¦<b>x</b>¦$(reboot)¦%s%n¦' +
    '../../etc/passwd¦{{7*7}}¦\\¦\\n¦=1+1¦@SUM(1)¦"; DROP¦a: b: c¦high left¦3 low¦9 o’clock¦N by E¦' +
    '0.75 in left, 1 in high¦level¦field¦fixed blade¦helical',
);

/** What YAML has a meaning for; typed as it is, without quotation marks. */
export const SIGNS = listed(
  '*a¦&a x¦&a [*a]¦!!float 1¦!!null¦!!str¦!t x¦!¦<<¦<<: *a¦- - -¦- a¦? x¦?¦:¦|¦>¦|-\n  x¦>+\n\n¦' +
    '%TAG ! x¦@x¦`x`¦{¦}¦[¦]¦{}¦[]¦[[]]¦{a}¦[a: b]¦{,}¦"¦\'¦"a¦\'a¦"\\x00"¦"\\u202e"¦"\\ud800"¦' +
    '"\\q"¦#¦# x¦a # b¦,¦---¦...¦--- x¦"a\nb"¦a\nb¦\'a\n\nb\'¦{ a: 1, a: 2 }¦{ ? a : b }¦[1, 2¦' +
    '{ a: [ { b: c } ] }¦\t¦ \t x¦""',
);

/** What a screen, a file or a program obeys rather than shows. */
export const CHARACTERS = listed(
  '\u0000¦\u0007¦\u0008¦\u001b[31m¦\u007f¦\u0085¦\u009b¦\u00a0¦\u00ad¦\u200b¦\u200f¦\u202e¦\u2066¦' +
    '\u2028¦\u2029¦\ufeff¦\ufffd¦\ufffe¦\ud800¦\udc00¦\ud83d\ude00¦' +
    '\ud83d\udc69\u200d\ud83d\udc69\u200d\ud83d\udc67¦\r¦\r\n¦\t¦e\u0301e\u0301e\u0301¦' +
    'Z\u0361\u035c\u0489¦İ¦ß¦ﬁ¦漢字¦العربية¦\ud835\udfd9¦\u000b¦\u000c¦\n¦\n\n¦\n  ',
);

/** Texts longer than anybody writes. */
const LONG = [
  ['x', 300],
  ['x', 5000],
  ['x ', 400],
  ['1', 2000],
  ['(', 2000],
  ['[', 1500],
  ['{a: ', 300],
  ['"', 700],
  ['- ', 500],
  ['1 ', 3000],
  ['a,', 900],
  ["'", 1001],
  ['-', 3000],
  ['in ', 600],
  ['😀', 500],
  ['a.', 700],
  ['&a ', 300],
  ['!', 400],
] as const;

const number = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...ODD_NUMBERS) },
  { weight: 2, arbitrary: fc.double({ min: -1000, max: 1000, noNaN: true }).map((x) => x.toPrecision(4)) },
  { weight: 1, arbitrary: fc.double().map(String) },
  { weight: 1, arbitrary: fc.integer({ min: -5, max: 200 }).map(String) },
);

/** A number with a unit, neither of which need be one. */
export const oddQuantity = fc
  .tuple(number, fc.constantFrom('', ' ', '  ', '\u00a0'), fc.constantFrom(...UNITS))
  .map(([value, gap, unit]) => value + gap + unit);

/** Characters of all the world; they are less to set up than fast-check's own, and to shrink. */
const anyCharacters = fc
  .array(fc.oneof(fc.integer({ min: 1, max: 0x17f }), fc.integer({ min: 1, max: 0x10_ffff })), {
    maxLength: 30,
  })
  .map((codes) => String.fromCodePoint(...codes));

/** What may stand where a single value belongs. */
export const oddText: fc.Arbitrary<string> = fc.oneof(
  { weight: 6, arbitrary: oddQuantity },
  { weight: 3, arbitrary: fc.constantFrom(...WORDS) },
  { weight: 3, arbitrary: fc.constantFrom(...SIGNS) },
  { weight: 2, arbitrary: fc.constantFrom(...CHARACTERS) },
  { weight: 1, arbitrary: fc.constantFrom(...LONG).map(([piece, times]) => piece.repeat(times)) },
  { weight: 1, arbitrary: anyCharacters },
  {
    weight: 1,
    arbitrary: fc
      .tuple(oddQuantity, fc.constantFrom(...CHARACTERS), fc.constantFrom(...WORDS))
      .map(([a, b, c]) => a + b + c),
  },
);
