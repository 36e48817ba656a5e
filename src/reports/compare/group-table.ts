import { numberText } from '../../documents/table/number-text.ts';
import { rangeColumn } from '../../documents/table/range-digits.ts';
import type { Column, Table } from '../../documents/table/table.ts';
import { fromSi } from '../../quantities/format.ts';
import { withError } from './difference-tables.ts';
import { rowWording } from './fields.ts';
import { buildsOf, type CompareFindings } from './findings.ts';
import { GROUP } from './groups.ts';

/** Groups of a dozen with each build, and whether one is really tighter; null when none was shot. */
export function groupTable({ comparison, groups, session: { units } }: CompareFindings): Table | null {
  const { questions } = comparison;
  if (groups.every((found) => found === null)) return null;
  const wording = rowWording('drop', units);
  return {
    title: `Size of a group of ${GROUP} from a sorted dozen, with a steady bow and perfect aim`,
    columns: [
      rangeColumn(questions.ranges, units),
      ...buildsOf(comparison).map(
        ({ build }, i): Column => ({ name: i === 0 ? 'now' : build.name, unit: wording.unit }),
      ),
    ],
    rows: questions.ranges.map((range, k) => [
      fromSi(range, units.range),
      ...groups.map((found, i) => {
        const paired = found?.[k];
        if (paired === undefined) return null;
        const size = numberText(wording.shown(paired.group), wording.digits + 1);
        return i === 0
          ? size
          : `${size} (${withError(paired.difference, { ...wording, digits: wording.digits + 1 })})`;
      }),
    ]),
    notes: [
      'In brackets: compared with now, shot with the same random differences. What varies is told by scatter.',
    ],
  };
}
