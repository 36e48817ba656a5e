import { createUnitClass, type Unit, type UnitCtor } from 'mathjs';

/**
 * The trade's units that mathjs does not know, each by its definition in units that it does.
 *
 * @source fps, gpi, mph, kph, rpm, percent, unity (the bare number of a ratio): by their names; knot: 1852 m in an hour, by
 *   definition. moa: the true minute of arc, 1/60 deg (not an inch at 100 yd). inHg: a column of 25.4 mm of conventional
 *   mercury, 13 595.1 kg/m3, under 9.80665 m/s2; NIST Special Publication 811 (2008), appendix B.8, prints 3386.389 Pa.
 *   ftlbf: one pound-force through one foot. gn and yds: other spellings of the grain and the yard.
 */
const ADDED: Readonly<Record<string, string>> = {
  fps: '1 ft/s',
  mps: '1 m/s',
  mph: '1 mi/hour',
  kph: '1 km/hour',
  knot: '1.852 km/hour',
  gpi: '1 grain/inch',
  gn: '1 grain',
  yds: '1 yd',
  inHg: '3386.388640341 Pa',
  ftlbf: '1 ft lbf',
  moa: '1 arcmin',
  rpm: '1 cycle/minute',
  percent: '0.01',
  unity: '1',
};

/** mathjs states 5/9 degF as a fraction; to plain numbers its value is all that matters. */
class NumberFraction {
  readonly isFraction = true;
  readonly numerator: number;
  readonly denominator: number;

  constructor(numerator: number, denominator: number) {
    this.numerator = numerator;
    this.denominator = denominator;
  }

  valueOf(): number {
    return this.numerator / this.denominator;
  }
}

/**
 * mathjs builds its Unit class over arithmetic for numbers, big numbers, fractions and complex numbers, which takes about
 * 60 ms at the start of every command. Over plain numbers it takes 5 ms, so that is what it is given here.
 */
function buildUnitClass(): UnitCtor {
  const unitClass = createUnitClass({
    config: { number: 'number', predictable: false },
    addScalar: (a, b) => a + b,
    subtractScalar: (a, b) => a - b,
    multiplyScalar: (a, b) => a * b,
    divideScalar: (a, b) => a / b,
    pow: (a, b) => a ** b,
    abs: Math.abs,
    fix: Math.trunc,
    round: Math.round,
    equal: (a, b) => a === b,
    isNumeric: (x) => typeof x === 'number',
    format: String,
    number: Number,
    Complex: { I: Number.NaN }, // only the reactive watt asks for it
    BigNumber: NumberFraction, // never built while config.number is 'number'
    Fraction: NumberFraction,
  });
  for (const [name, definition] of Object.entries(ADDED)) unitClass.createUnit({ [name]: { definition } });
  return unitClass;
}

let unitClass: UnitCtor | undefined;

/**
 * A number with a unit, or a unit alone, as mathjs reads it. The class is built at the first call, not at import.
 *
 * @throws SyntaxError (of mathjs) when it cannot read the text
 */
export function parseUnit(text: string): Unit {
  unitClass ??= buildUnitClass();
  return unitClass.parse(text);
}
