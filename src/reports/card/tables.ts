import type { Table } from '../../documents/table/table.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { tableOf } from '../field.ts';
import { cutTable } from '../slope/tables.ts';
import { cardFields } from './fields.ts';
import type { CardFindings } from './findings.ts';

/** Everything about every range, a row each. */
export const cardTable = (found: CardFindings, units: DisplayUnits): Table =>
  tableOf(cardFields(found, units), found.rows, units);

/** What to take off the range uphill and downhill; half a yard far out is an inch on the target. */
export const cardCuts = ({ slopes }: CardFindings, units: DisplayUnits): Table => cutTable(units, slopes, 1);
