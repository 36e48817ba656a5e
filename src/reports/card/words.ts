import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { contactNote } from '../marks/words.ts';
import type { BelowZero, CardFindings } from './findings.ts';

/** A wind short enough for the head of a column: "10 mph". */
export const windWords = (speed: number, units: DisplayUnits): string =>
  formatQuantity(speed, units.windSpeed, 1).replace(/\.0(?= )/, '');

/** Readings that no scale may have; none for most. */
export const belowZeroNotes = ({ belowZero }: CardFindings, units: DisplayUnits): readonly string[] =>
  belowZero === null
    ? []
    : [
        `The mark lies below zero on the scale ${whereWords(belowZero, units)}. Check that your sight can ` +
          'move that far before you rely on it.',
      ];

function whereWords({ from, to, isToTheEnd }: BelowZero, units: DisplayUnits): string {
  const [first, last] = [from, to].map((range) => formatQuantity(range, units.range, 0));
  if (isToTheEnd) return `from ${first} on`;
  return first === last ? `at ${first}` : `from ${first} to ${last}`;
}

/** Where the arrow would touch the sight; none for most. */
export const contactNotes = ({ touching }: CardFindings, units: DisplayUnits): readonly string[] =>
  touching === null ? [] : [contactNote(touching, units)];

/** What the columns of the page mean, and how far to trust them. */
export const pageNotes = (found: CardFindings, zeroRange: Metres, units: DisplayUnits): readonly string[] => [
  `Travel: of the pin below its place at ${formatQuantity(zeroRange, units.range, 0)}. ± on target: ` +
    'one standard error of the mark; your group adds to it. Highest: above the line of sight on ' +
    'the way.',
  `Wind: ${windWords(found.crosswind, units)} straight from the side moves the hit this far downwind. ` +
    "From 2, 4, 8 or 10 o'clock take 7/8 of it, from 1, 5, 7 or 11 half.",
  'Cant: for each degree the top limb leans to one side, the arrow hits this far to that side.',
  'Slopes: uphill is +, range along the line of sight. "-": the pin would have to be above every mark, or above where ' +
    'the slider ends, so set the highest.',
  ...belowZeroNotes(found, units),
  ...(found.isTied && found.rows.some(({ toldSd }) => toldSd === null)
    ? ['"-" in place of ±: so far out, a mark may be anything.']
    : []),
  found.isTied
    ? 'Shoot a mark before you trust it.'
    : 'No mark ties the readings to the arrow yet: shoot one before you use them.',
];
