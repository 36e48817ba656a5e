import { rangeWords } from '../../documents/table/range-digits.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { thirdsOf } from '../listed.ts';
import { heightWords, roughDigits } from '../side-words.ts';
import type { FlyFindings } from './findings.ts';

export const launchWords = ({ aim, launchAngle }: FlyFindings, units: DisplayUnits): string =>
  `Sighted in for ${rangeWords(aim, units)}: launched ${formatQuantity(launchAngle, 'deg', 3)} above the line of sight.`;

/** Where the arrow hits with the sight set for one range, and what it strikes with. */
export function verdictWords({ aim, rows }: FlyFindings, units: DisplayUnits): string {
  const near = (range: number): boolean => Math.abs(range - aim) < SAME_RANGE;
  const told = thirdsOf(rows.filter(({ range }) => range > aim && !near(range)));
  const last = told.at(-1) ?? rows.at(-1);
  const heights = told.map(
    ({ range, height }) => `${heightWords(height, units, roughDigits(units))} at ${rangeWords(range, units)}`,
  );
  const energy =
    last === undefined
      ? ''
      : `${formatQuantity(last.energy, units.energy, 0)} at ${rangeWords(last.range, units)}`;
  return `With the ${rangeWords(aim, units)} mark: ${[heights.join(', '), energy].filter((part) => part !== '').join('; ')}.`;
}
/** m */
const SAME_RANGE = 0.01;

/** What became of rows that were asked for and are not there, a line each; none when all are. */
export const missingRows = (
  { beginsAt, endsAt, endsForAll }: FlyFindings,
  units: DisplayUnits,
): readonly string[] => [
  ...(beginsAt === null
    ? []
    : [`Rows begin at ${rangeWords(beginsAt, units)}: closer than that, the arrow is still on the string.`]),
  ...(endsAt === null
    ? []
    : [
        `Rows end at ${rangeWords(endsAt, units)}: ` +
          (endsForAll
            ? 'this arrow cannot carry to the next row.'
            : 'this shot falls upright before the next row.'),
      ]),
];

/** What the columns mean, a line each. */
export const columnWords = ({ isPoint }: FlyFindings): readonly string[] => [
  'drop: below the launch line. height: above the line of sight. drift: right positive, of a bow pointed straight ahead.',
  ...(isPoint
    ? [
        'The file lists no parts, so the arrow flies as a point, without spin and the drift that comes with it.',
      ]
    : []),
];
