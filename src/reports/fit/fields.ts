import type { Residual } from '../../calibration/fit.ts';
import type { MarkResidual, PencilResidual } from '../../calibration/mark-residual.ts';
import type { Field } from '../field.ts';
import type { Session } from '../session.ts';
import { targetDigits } from '../side-words.ts';
import { VERDICT_WORDS } from '../verdict-words.ts';
import type { ParameterFound } from './findings.ts';
import { type ParameterWords, parameterWords } from './parameter-words.ts';

/** What was known of each parameter before and after the marks: each in the unit that an archer reads it in. */
export function parameterFields(session: Session): readonly Field<ParameterFound>[] {
  const words = parameterWords(session);
  const told = ({ name }: ParameterFound, number: (parameter: ParameterWords) => number): string =>
    number(words[name]).toFixed(words[name].digits);
  return [
    { key: 'name', datum: ({ name }) => name, name: 'parameter', of: ({ name }) => words[name].name },
    { key: 'unit', datum: ({ unit }) => unit, name: 'unit', of: ({ name }) => words[name].unit },
    {
      key: 'value',
      datum: ({ value }) => value,
      name: 'value',
      of: (row) => told(row, ({ value }) => value(row.value)),
    },
    { key: 'sd', datum: ({ sd }) => sd, name: '±', of: (row) => told(row, ({ spread }) => spread(row.sd)) },
    {
      key: 'prior_value',
      datum: ({ priorValue }) => priorValue,
      name: 'before',
      minor: true,
      of: (row) => (row.wasKnown ? told(row, ({ value }) => value(row.priorValue)) : 'unknown'),
    },
    {
      key: 'prior_sd',
      datum: ({ priorSd }) => priorSd,
      name: '±',
      minor: true,
      of: (row) => (row.wasKnown ? told(row, ({ spread }) => spread(row.priorSd)) : ''),
    },
    {
      key: 'verdict',
      datum: ({ verdict }) => verdict,
      name: 'from',
      of: ({ verdict }) => VERDICT_WORDS[verdict],
    },
  ];
}

/** Of whatever the sight was set to, where it was shot from and how far off it hit. */
interface OfShot {
  readonly residual: Residual;
}
const RANGE: Field<OfShot> = {
  key: 'range_m',
  name: 'range',
  unit: 'range',
  digits: 1,
  of: ({ residual }) => residual.measurement.range,
};
const OFF_TARGET: readonly Field<OfShot>[] = [
  {
    key: 'on_target_m',
    name: 'on target',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ residual }) => residual.residual,
  },
  {
    key: 'on_target_sd_m',
    name: '±',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ residual }) => residual.measurement.sd,
  },
  { key: 'studentised', name: 'in errors', digits: 1, of: ({ residual }) => residual.studentised },
];

/** Every shot mark beside what the calibrated model says of it. */
export const MARK_FIELDS: readonly Field<MarkResidual>[] = [
  RANGE,
  { key: 'reading', name: 'reading', symbol: 'scale', digits: 2, of: ({ reading }) => reading },
  { key: 'predicted', name: 'predicted', symbol: 'scale', digits: 2, of: ({ predicted }) => predicted },
  {
    key: 'residual',
    name: 'residual',
    symbol: 'scale',
    digits: 2,
    of: ({ reading, predicted }) => reading - predicted,
  },
  ...OFF_TARGET,
];

/** Every pencil line on the strip beside the calibrated model's. */
export const PENCIL_FIELDS: readonly Field<PencilResidual>[] = [
  RANGE,
  { key: 'on_tape_m', name: 'pencil line', unit: 'mm', digits: 2, of: ({ onTape }) => onTape },
  { key: 'predicted_m', name: 'predicted', unit: 'mm', digits: 2, of: ({ predicted }) => predicted },
  {
    key: 'residual_m',
    name: 'residual',
    unit: 'mm',
    digits: 2,
    of: ({ onTape, predicted }) => onTape - predicted,
  },
  ...OFF_TARGET,
];

/** Chronograph readings and drops beside the model, for programs. */
export const OTHER_FIELDS: readonly Field<Residual>[] = [
  { key: 'kind', of: ({ measurement }) => measurement.kind },
  { key: 'range_m', of: ({ measurement }) => measurement.range },
  { key: 'residual', of: ({ residual }) => residual },
  { key: 'sd', of: ({ measurement }) => measurement.sd },
  { key: 'studentised', of: ({ studentised }) => studentised },
];
