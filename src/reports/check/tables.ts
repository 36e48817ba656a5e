import type { Table } from '../../documents/table/table.ts';
import { tableOf } from '../field.ts';
import type { Session } from '../session.ts';
import { DRAG_FIELDS, PIECE_FIELDS } from './fields.ts';
import type { CheckFindings } from './findings.ts';

export const pieceTable = ({ assembly, units }: Session): Table =>
  tableOf(PIECE_FIELDS, assembly.arrow.pieces, units, 'Arrow, part by part');

/** The terms of the drag, and their sum in the last row. */
export function dragTable(
  { assembly, units }: Session,
  { dragTerms, dragSum }: Pick<CheckFindings, 'dragTerms' | 'dragSum'>,
): Table {
  const given = assembly.arrow.dragFrom === 'given';
  const terms = tableOf(
    DRAG_FIELDS,
    dragTerms,
    units,
    "Drag at launch speed, term by term, on the shaft's " +
      `cross-section${given ? ' (the coefficient in the file replaces it)' : ''}`,
  );
  const ofTheSum = given ? '' : 'good to 15 % (one standard error) unless the file says otherwise';
  return { ...terms, rows: [...terms.rows, ['sum', dragSum, null, ofTheSum]] };
}
