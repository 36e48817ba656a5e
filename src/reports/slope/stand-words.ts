import { rangeWords } from '../../documents/table/range-digits.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { tableOf } from '../field.ts';
import { type Block, note, tableBlock } from '../report.ts';
import { holdWords } from './hold-words.ts';
import type { CountedAlong, StandFindings, StandRow } from './stand.ts';
import { GROUND_COLUMNS, LINE_COLUMNS } from './stand-fields.ts';

/** Shots that are asked for most from a stand, m: 10, 20 and 30 yd. @source common practice, no source */
const USUAL = [9.144, 18.288, 27.432];

/** What to set, and where even the highest mark hits high what to hold, at usual distances from the foot of each stand. */
export function standVerdict({ rows }: StandFindings, units: DisplayUnits): string {
  const stands = [...new Set(rows.map(({ stand }) => stand))];
  return stands
    .map((stand) => {
      const here = rows.filter((row) => row.stand === stand && row.along === 'ground');
      const told = [...new Set(USUAL.map((usual) => nearestTo(usual, here)))].map(
        (row) => `${rangeWords(row.ground, units)}: ${whatToDo(row, units)}`,
      );
      return `From ${standName(at(here, 0), units)} up, ${told.join('; ')}.`;
    })
    .join(' ');
}

const nearestTo = (usual: number, rows: readonly StandRow[]): StandRow =>
  at(
    rows.toSorted((a, b) => Math.abs(a.ground - usual) - Math.abs(b.ground - usual)),
    0,
  );

const standName = ({ stand }: StandRow, { height }: DisplayUnits): string =>
  formatQuantity(stand, height, height === 'm' ? 1 : 0);

const whatToDo = ({ mark: { markRange, hold } }: StandRow, units: DisplayUnits): string =>
  markRange === null
    ? `set the highest, ${holdWords(hold, units)}`
    : `set ${formatQuantity(markRange, units.range, 1)}`;

/** For every stand a table by distance along the ground and one by what a rangefinder reads, and what is counted from where. */
export function standBlocks({ rows, eye, spot }: StandFindings, units: DisplayUnits): readonly Block[] {
  const stands = [...new Set(rows.map(({ stand }) => stand))];
  const table = (stand: number, along: CountedAlong): readonly Block[] => {
    const here = rows.filter((row) => row.stand === stand && row.along === along);
    const [first] = here;
    if (first === undefined) return [];
    const title = `From ${standName(first, units)} up, by distance along the ${along === 'ground' ? 'ground' : 'line of sight'}`;
    return [tableBlock(tableOf(along === 'ground' ? GROUND_COLUMNS : LINE_COLUMNS, here, units, title))];
  };
  const high = (value: number) => formatQuantity(value, units.height, 1);
  return [
    ...stands.flatMap((stand) => [...table(stand, 'ground'), ...table(stand, 'line')]),
    note(
      [
        'along the ground: level ground, from the foot of the stand; along the line: what a rangefinder reads at the eye.',
        `The stand's height is its floor's above the ground. The eye is ${high(eye)} above the floor, the spot aimed at ` +
          `${high(spot)} above the ground.`,
        '"highest": the pin would have to be above every mark, or above where the slider ends, so set the highest and hold ' +
          'that much low.',
      ].join('\n'),
    ),
  ];
}
