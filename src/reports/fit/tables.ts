import type { Table } from '../../documents/table/table.ts';
import { tableOf } from '../field.ts';
import type { Session } from '../session.ts';
import { MARK_FIELDS, PENCIL_FIELDS, parameterFields } from './fields.ts';
import type { FitFindings } from './findings.ts';

/** What was known of each parameter before and after the marks. */
export const parameterTable = (session: Session, { parameters }: FitFindings): Table =>
  tableOf(
    parameterFields(session),
    parameters.filter(({ isShown }) => isShown),
    session.units,
  );

/** Every shot mark beside what the calibrated model says of it. */
export const residualTable = ({ units }: Session, { marks }: FitFindings): Table =>
  tableOf(MARK_FIELDS, marks, units);

/** Every pencil line on the strip beside where the calibrated model would draw it. */
export const pencilTable = ({ units }: Session, { pencil }: FitFindings): Table =>
  tableOf(PENCIL_FIELDS, pencil, units);
