import { rangeWords } from '../../documents/table/range-digits.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import type { FlyFindings } from './findings.ts';

export const launchWords = ({ aim, launchAngle }: FlyFindings, units: DisplayUnits): string =>
  `Sighted in for ${rangeWords(aim, units)}: launched ${formatQuantity(launchAngle, 'deg', 3)} above the line of sight.`;

/** What became of rows that were asked for and are not there, a line each; none when all are. */
export const missingRows = ({ beginsAt, endsAt }: FlyFindings, units: DisplayUnits): readonly string[] => [
  ...(beginsAt === null
    ? []
    : [`Rows begin at ${rangeWords(beginsAt, units)}: closer than that, the arrow is still on the string.`]),
  ...(endsAt === null
    ? []
    : [`Rows end at ${rangeWords(endsAt, units)}: this arrow cannot carry to the next row.`]),
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
