import type { Measurement } from '../calibration/measurement.ts';
import type { SightMark } from '../calibration/sight-mark.ts';
import { formatQuantity } from '../quantities/format.ts';
import type { Session } from './session.ts';

/** A measurement by its range: "the 60 yd mark"; by its day too, where that range was shot on more than one. */
export function measurementName(session: Session, measurement: Measurement): string {
  const range = formatQuantity(measurement.range, session.units.range, 0);
  switch (measurement.kind) {
    case 'mark':
      return `the ${range} mark${dayWords(session, measurement)}`;
    case 'pencil':
      return `the pencil line of ${range}${dayWords(session, measurement)}`;
    case 'speed':
      return measurement.isAtBow
        ? `the chronograph reading of ${measurement.day}`
        : `the chronograph reading at ${range}${dayWords(session, measurement)}`;
    case 'drop':
      return `the drop at ${range}${dayWords(session, measurement)}`;
  }
}

/** The range of a measurement, and its day where that range was shot on more than one: "60 yd on 2026-08-30". */
export function measuredAt(session: Session, measurement: Measurement): string {
  const { day } = measurement;
  const range = formatQuantity(measurement.range, session.units.range, 0);
  return day === null
    ? `${range}${dayWords(session, measurement)}`
    : `${range}${dayWords(session, measurement, 'on')}`;
}

function dayWords(session: Session, measurement: Measurement, joined = 'of'): string {
  const { day, kind, range } = measurement;
  const isElsewhen = session.assembly.problem.measurements.some(
    (other) => other.kind === kind && Math.abs(other.range - range) < SAME_RANGE && other.day !== day,
  );
  if (!isElsewhen) return '';
  return day === null ? ' without a date' : ` ${joined} ${day}`;
}
/** Ranges as near as this are called the same, m. */
const SAME_RANGE = 0.5;

/** What was written of a mark, or would be, as its archer writes it: a number of the scale, or millimetres on the strip. */
export const writtenWords = ({ kind }: Pick<SightMark, 'kind'>, written: number, digits?: number): string =>
  kind === 'mark' ? said(written, digits) : `${said(1000 * written, digits ?? STRIP_DIGITS)} mm`;

/** A pencil line is measured to a tenth of a millimetre. */
const STRIP_DIGITS = 1;

/** A number with as many digits as it has, or at most so many. */
export const said = (value: number, digits?: number): string =>
  digits === undefined ? String(value) : String(Number(value.toFixed(digits)));
