import { DEFAULTS } from '../../src/setup/assemble/defaults.ts';
import { type SetupKey, setupKeys } from '../../src/setup/keys.ts';
import type { Limit } from '../../src/setup/schema/limit.ts';

/** The headings of the page, each with the keys at the top of the file that it is about. */
const PARTS: readonly {
  readonly heading: string;
  readonly top: readonly string[];
  readonly note?: string;
}[] = [
  { heading: 'The bow', top: ['title', 'bow'] },
  {
    heading: 'The arrow',
    top: ['arrow'],
    note: 'Mass and diameter are enough for marks. The parts add drag by shape, spin, drift and stability.',
  },
  { heading: 'The launch', top: ['launch'] },
  {
    heading: 'Air, wind and place',
    top: ['air', 'wind', 'latitude', 'azimuth', 'slope', 'eye_height'],
    note: 'Without `air` the standard atmosphere at sea level is used; with an `altitude` alone, that of the altitude.',
  },
  { heading: 'The sight', top: ['sight'] },
  {
    heading: 'What was shot',
    top: ['marks', 'speeds', 'drops', 'days'],
    note: 'In a list every entry begins with a dash. What was shot in other air, or with another arrow, stands under `days`.',
  },
  {
    heading: 'Builds to compare',
    top: ['builds'],
    note: 'Each build names only what differs from the arrow above.',
  },
  {
    heading: 'Places to answer for',
    top: ['places'],
    note: 'For `--place`. What is not written comes from the standard atmosphere at the altitude, or else from `air`.',
  },
  {
    heading: 'The tuning evening',
    top: ['tuning'],
    note: 'Read by `tune` alone; each entry of the log needs its day, its step and the keys of that step.',
  },
];

const INTRO = `# The setup file

Five invented setups stand here, each with a page that runs it:

- [mountain-hunt](mountain-hunt/README.md): a hunting bow at a high camp, marks to 100 yd, thin air.
- [field-course](field-course/README.md): a 3-D bow with a light arrow, and a sight whose scale nobody has measured.
- [which-build](which-build/README.md): one tuned arrow and three that might replace it.
- [home-and-away](home-and-away/README.md): two days of shooting, two builds, and answers for two places elsewhere.
- [tuning-evening](tuning-evening/README.md): a new string, and two evenings from the nock to bare shafts.

\`quillpath new\` writes a file to start from, with its lines explained. The tables below list every key the file may have.
\`npm run golden\` writes this page from the schema that reads the file, so it cannot fall behind.

A dot leads into a section: \`bow.peep_height\` is the key \`peep_height\` under \`bow:\`. A key marked "needed" is needed as soon
as its section is in the file. The unit shown is the usual one, and any other of its kind will do. A value outside the range is
refused with the reason.

## Uncertainties

Every quantity may have its standard uncertainty beside it, under the same name with \`_sd\`: \`speed_sd: 1 fps\`. The fit relies
on these, so they have defaults:

`;

const AFTER_UNCERTAINTIES = `
Those with \`relative\` in their name, and \`marks.arrow_spread\` (the standard deviation of one arrow, divided by the range),
are not keys of the file: write \`arrow.drag_coefficient_sd\`, \`sight.scale.travel_per_unit_sd\` or \`marks.group\` instead.
A mark may state \`vertical_sd\` or \`reading_sd\` where you know better than its group says.
`;

/** `examples/README.md`, from the schema. */
export function setupKeysPage(): string {
  const keys = setupKeys();
  const parts = PARTS.map(({ heading, top, note }) => {
    const rows = keys.filter(({ path }) => top.includes(path.split('.', 1).join(''))).map(keyRow);
    const table = tableOf(['key', 'unit and range', 'default', 'what it is'], rows);
    return `\n## ${heading}\n\n${note === undefined ? '' : `${note}\n\n`}${table}`;
  });
  return INTRO + uncertainties() + AFTER_UNCERTAINTIES + parts.join('');
}

const tableOf = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |\n`).join('');

const keyRow = ({ path, what, needed, fallback, ...key }: SetupKey): readonly string[] => [
  `\`${path}\``,
  rangeOf(key),
  needed ? 'needed' : (fallback ?? '-'),
  what,
];

function rangeOf({
  kind,
  limit,
  words,
  keysOf,
}: Pick<SetupKey, 'kind' | 'limit' | 'words' | 'keysOf'>): string {
  if (keysOf !== undefined) return `any keys of \`${keysOf}\``;
  if (kind !== 'value') return kind;
  if (limit !== undefined) return `${unitOf(limit)}, ${spaced(limit.min)} to ${spaced(limit.max)}`;
  return words?.join(', ') ?? 'free text';
}

function unitOf({ unit, whole }: Limit): string {
  if (unit !== '1') return unit;
  return whole ? 'whole number' : 'number';
}

/** `-10 000`: five digits or more in groups of three. */
const spaced = (value: number): string =>
  Math.abs(value) < 10_000 ? String(value) : String(value).replace(/\B(?=(\d{3})+$)/g, ' ');

const uncertainties = (): string =>
  tableOf(
    ['key', 'default', 'why'],
    Object.entries(DEFAULTS)
      .filter(([key]) => key.endsWith('_sd') || key.endsWith('arrow_spread'))
      .map(([key, { text, why }]) => [`\`${key}\``, text, why]),
  );

/** The keys at the top of the file that no heading is about, and those that two are. */
export function misplacedKeys(): readonly string[] {
  const tops = setupKeys()
    .map(({ path }) => path)
    .filter((path) => !path.includes('.'));
  const headed = PARTS.flatMap(({ top }) => top);
  return [...tops, ...headed].filter(
    (key) => headed.filter((each) => each === key).length !== 1 || !tops.includes(key),
  );
}
