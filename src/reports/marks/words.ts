import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { reachNotes } from '../reach-words.ts';
import type { MarksFindings, ScaleState } from './findings.ts';

/** What the columns mean. */
export const columnWords = (zeroRange: Metres, units: DisplayUnits): string =>
  `travel: of the pin, down from its place at ${formatQuantity(zeroRange, units.range, 0)}. ±: one standard error.
nearer hit: where the same setting hits on the way up. highest: above the line of sight, at that range.
lateral: left (-) or right of the aim with the windage set at the zero range.`;

/** What the columns that a narrow screen keeps mean. */
export const shortColumnWords = (zeroRange: Metres, units: DisplayUnits): string =>
  `travel: of the pin, down from its place at ${formatQuantity(zeroRange, units.range, 0)}. ±: one standard error.`;

/** What is left out, and why: a sentence each. */
export const marksNotes = (
  { scale, touching, ...reach }: MarksFindings,
  units: DisplayUnits,
): readonly string[] => [
  ...reachNotes(reach, units),
  ...SCALE_NOTES[scale],
  ...(touching === null ? [] : [contactNote(touching, units)]),
];

const SCALE_NOTES: Readonly<Record<ScaleState, readonly string[]>> = {
  known: [],
  'not in the file': ['The file has no scale (sight.scale), so marks are given as travel only.'],
  'not known yet': [
    'The scale is not known yet, so marks are given as travel only: shoot marks at two ranges or more, or write ' +
      'sight.scale.travel_per_unit and at_zero.',
  ],
};

/** Where the arrow would touch the sight. */
export const contactNote = (touching: Metres, units: DisplayUnits): string =>
  `From ${formatQuantity(touching, units.range, 0)} on, the arrow or its vanes would touch the sight, ` +
  'so the tape has to end before that.';
