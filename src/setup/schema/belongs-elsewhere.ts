import { once } from '../../numerics/once.ts';
import { calledIn, plainName, shortFor } from '../canonical/called.ts';
import { sectionAt } from '../canonical/section-at.ts';
import type { KeyPath } from '../key-path.ts';
import { keysAt } from './known-keys.ts';
import { setupSchema } from './schema.ts';

/** Where a key belongs that stands in the wrong place, or what to make of it. */
export interface Belongs {
  /** An order without its full stop. */
  readonly write: string;
  /** The whole key paths, where there are some. */
  readonly paths?: readonly string[];
}

/** Names that may be two things, or that stand for no key: what to write, by section and name; an empty one stands for any. */
const ANSWERS: readonly (readonly [section: string, names: string, write: string])[] = [
  [
    'bow',
    'weight mass',
    'Write "peak_draw_weight" for the draw weight; the mass of the bow itself is not used',
  ],
  [
    'air',
    'barometer altimeter qnh',
    'Write "pressure" for what a barometer on the spot shows, or "sea_level_pressure" for what a weather report gives',
  ],
  [
    'marks',
    'windage',
    'Write "lateral" for how far left (-) or right (+) the group was, "reading" for the sight',
  ],
  [
    'marks',
    'elevation height',
    'Write "vertical" for how far low (-) or high (+) the group was, "reading" for the sight',
  ],
  [
    'arrow',
    'spine static_spine',
    'Write it as "parts: { shaft: { length: 28.5 in, deflection: 300 } }" with your numbers',
  ],
  [
    'arrow',
    'gpi grains_per_inch',
    'Write it as "parts: { shaft: { length: 28.5 in, mass_per_length: 9.5 gpi } }" with your numbers',
  ],
  [
    'arrow.parts',
    'wrap wraps light lighted_nock tape weights',
    'Write it as "others: [{ name: wrap, mass: 8 gr, from_nock: 4 in }]" with your numbers',
  ],
  [
    'arrow.parts.vanes',
    'shape profile',
    'Write "shape: shield", "shape: parabolic" or "shape: low" together with length and height, or else "tip_chord"',
  ],
  [
    'arrow.parts.vanes',
    'helical offset',
    'Write "angle: 3 deg" and "turn: right", or left; a helical and an offset are one angle here',
  ],
  [
    '',
    'foc front_of_center front_of_centre',
    'Move it behind a #: front of centre follows from the parts, and check shows it',
  ],
  [
    '',
    'kinetic_energy ke energy momentum',
    'Move it behind a #: it follows from mass and speed, and fly shows it',
  ],
  ['', 'pin_gap', 'Move it behind a #: "pins" under "sight:" takes what each pin is set for'],
];

/** What to say of a name that stands elsewhere in the schema; undefined of one that stands nowhere. */
export function belongsElsewhere(path: KeyPath, name: string): Belongs | undefined {
  const section = sectionAt(path);
  const plain = plainName(name);
  const answer = ANSWERS.find(
    ([at, names]) => (at === section || at === '') && names.split(' ').includes(plain),
  );
  if (answer !== undefined) return { write: answer[2] };
  const homes = sectionsToSearch()
    .filter(({ home }) => home !== section)
    .flatMap(({ home, known }) =>
      keysNamed(home, known, plain).map((key) => ({ home, path: home === '' ? key : `${home}.${key}` })),
    );
  if (homes.length === 0 || homes.length > MOST_HOMES) return undefined;
  const sections = homes.filter(({ home }) => home !== '').map(({ home }) => `"${home}:"`);
  const places = [
    ...(sections.length === 0 ? [] : [`under ${sections.join(' or ')}`]),
    ...(sections.length === homes.length ? [] : ['to the top of the file']),
  ];
  return { write: `Move it ${places.join(' or ')}`, paths: homes.map(({ path: home }) => withShort(home)) };
}

/** The number that a section is about: arrow.parts.point.mass. */
function withShort(path: string): string {
  const short = shortFor(path);
  return short === undefined ? path : `${path}.${short}`;
}

/** A name that stands in more places than this says nothing. */
const MOST_HOMES = 4;

function keysNamed(section: string, known: readonly string[], name: string): readonly string[] {
  if (known.includes(name)) return [name];
  return calledIn(section, name)
    .filter((target) => target.length === 1)
    .map((target) => target.join('.'))
    .filter((key) => known.includes(key));
}

const stepsOf = (section: string): readonly string[] => (section === '' ? [] : section.split('.'));

interface Home {
  /** The path of a section. */
  readonly home: string;
  /** Its keys. */
  readonly known: readonly string[];
}

/** The sections that a stray key may belong to, found once: a file of another kind asks for hundreds of keys. */
const sectionsToSearch = once((): readonly Home[] =>
  sectionsUnder('')
    .filter(
      (home) => !/^(builds|days|places|tuning)/.test(home) && !home.startsWith('arrow.drag_coefficient'),
    )
    .map((home) => ({ home, known: keysAt(setupSchema, stepsOf(home)) })),
);

/** Every section of the schema by its path, lists as the sections of their entries. */
function sectionsUnder(section: string): readonly string[] {
  const keys = keysAt(setupSchema, stepsOf(section));
  return keys.length === 0
    ? []
    : [section, ...keys.flatMap((key) => sectionsUnder(section === '' ? key : `${section}.${key}`))];
}
