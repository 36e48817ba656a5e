import type { Dimension } from './dimension.ts';

/** A unit by one of its names: as mathjs reads it, and whether it takes the kind of the key to know what was meant. */
export interface SpokenUnit {
  readonly unit: string;
  readonly byKind: boolean;
}

/** Names of units in small letters, by the spelling that the program writes. */
type Names = Readonly<Record<string, string>>;

/** A unit of speed for a degree of warmth: over it, or "per" it. */
const names = (speeds: readonly string[], degrees: readonly string[]): string =>
  speeds
    .flatMap((speed) => degrees.flatMap((degree) => [`${speed}/${degree}`, `${speed}per${degree}`]))
    .join(' ');

/**
 * What units are called on a range; common practice, no source. Upper case, a full stop at the end and blanks are taken away
 * before a name is looked up.
 */
const CALLED: Readonly<Record<Dimension, Names>> = {
  length: {
    in: "\" \u2033 \u201d '' \u2019\u2019 in ins inch inches",
    ft: "' \u2032 \u2019 ft foot feet",
    yd: 'y yd yds yrd yrds yard yards',
    m: 'm mtr mtrs meter meters metre metres',
    cm: 'cm cms centimeter centimeters centimetre centimetres',
    mm: 'mm mms millimeter millimeters millimetre millimetres',
    mil: 'thou thousandth thousandths',
  },
  mass: {
    gr: 'gr grs grn grns gn gns grain grains',
    g: 'g gm gms gram grams gramme grammes',
    kg: 'kg kgs kilo kilos kilogram kilograms',
    oz: 'oz ozs ounce ounces',
    lb: '# lb lbs pound pounds',
  },
  speed: {
    fps: 'fps f/s ft/s ft/sec feet/s feet/sec feet/second ftpersec ftpersecond feetpersecond footpersecond',
    'm/s': 'mps m/s m/sec ms-1 mpersec meterspersecond metrespersecond meters/second metres/second',
    mph: 'mph mi/h mi/hr miles/hour milesperhour mileperhour',
    'km/h': 'kph kmh kmph km/h km/hr kmperhour kilometersperhour kilometresperhour',
    knot: 'kt kts kn kns knot knots',
  },
  angle: {
    deg: 'deg degs degree degrees \u00b0 \u00ba',
    rad: 'rad rads radian radians',
    mrad: 'mrad mrads',
    moa: 'moa arcmin arcmins',
  },
  temperature: {
    degF: 'f degf \u00b0f \u00baf degreef degreesf fahrenheit degreesfahrenheit degfahrenheit',
    degC: 'c degc \u00b0c \u00bac degreec degreesc celsius centigrade degreescelsius degcelsius',
    K: 'k kelvin',
  },
  pressure: {
    inHg: 'inhg in.hg inofhg inchhg incheshg inofmercury inchesofmercury "hg',
    hPa: 'hpa hectopascal hectopascals',
    mbar: 'mb mbs mbar mbars millibar millibars',
    kPa: 'kpa',
    Pa: 'pa pascal pascals',
    mmHg: 'mmhg torr mmofmercury',
    psi: 'psi',
  },
  force: { lbf: 'lbf lbsf poundforce pounds-force', N: 'n newton newtons', kgf: 'kgf kp' },
  massPerLength: {
    gpi: 'gpi gr/in gr/inch grs/in grains/in grains/inch grperin grperinch grainsperinch',
    'g/m': 'g/m grams/m gramspermeter gramspermetre',
  },
  ratio: { percent: '% percent pct' },
  time: { s: 's sec secs second seconds', ms: 'ms msec' },
  energy: {
    'ft lbf': 'ftlbf ftlb ftlbs ft-lb ft-lbs ft-lbf footpound footpounds foot-pounds',
    J: 'j joule joules',
  },
  speedPerTemperature: {
    'fps/degF': names(['fps', 'ft/s', 'ft/sec'], ['f', 'degf', '\u00b0f']),
    'fps/degC': names(['fps', 'ft/s', 'ft/sec'], ['c', 'degc', '\u00b0c', 'k', 'kelvin']),
    'm/s/K': names(['m/s', 'mps'], ['c', 'degc', '\u00b0c', 'k', 'kelvin']),
    'm/s/degF': names(['m/s', 'mps'], ['f', 'degf', '\u00b0f']),
  },
};

/** Names of another kind of unit that, of this kind, can mean only one thing: pounds of draw weight, inches of mercury. */
const BY_KIND: Partial<Readonly<Record<Dimension, Names>>> = {
  force: { lbf: '# lb lbs pound pounds', kgf: 'kg kgs kilo kilos kilogram kilograms' },
  pressure: { inHg: '" \u2033 in inch inches' },
};

const bare = (name: string): string =>
  name
    .toLowerCase()
    .replace(/\s+/g, '')
    .replace(/^-(?=[a-z])/, '')
    .replace(/\.$/, '');

const unitIn = (names: Names | undefined, name: string): string | undefined =>
  Object.entries(names ?? {}).find(([, called]) => called.split(' ').includes(name))?.[0];

/** The unit that a name stands for where a quantity of a kind belongs; undefined for a name that nobody uses for one. */
export function spokenUnit(name: string, dimension: Dimension): SpokenUnit | undefined {
  const called = bare(name);
  const unit = unitIn(CALLED[dimension], called) ?? unitIn(CALLED[dimension], called.replaceAll('.', ''));
  if (unit !== undefined) return { unit, byKind: false };
  const byKind = unitIn(BY_KIND[dimension], called);
  return byKind === undefined ? undefined : { unit: byKind, byKind: true };
}
