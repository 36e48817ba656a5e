import { DIMENSIONS } from '../../quantities/dimension.ts';
import { type DisplayUnit, fixedDigits, fromSi, symbolOf, toSi } from '../../quantities/format.ts';
import { dimensionIn, type Limit, otherUnit } from './limit.ts';

/** Why one value of the file will not do: the clause, what would do, and the text to write. */
export interface Refusal {
  /** `"28.5" has no unit` */
  readonly reason: string;
  /** `a length between 8 and 42 in` */
  readonly allowed: string;
  /** `"28.5 in" or "724 mm"` */
  readonly write: string;
}

/** A unit of the metric kind at the end of what was written, so that limits are shown in metric too. */
const METRIC =
  /(?:^|[\d\s.])(?:[kmc]?m|k?g|mg|g\/m|m\/s|mps|km\/h|kph|[hk]?Pa|mbar|bar|N|kgf|J|K|°?\s?C|degC)$/;

/** Whether the text ends in a metric unit. */
export const isMetric = (text: string): boolean => METRIC.test(text.trim());

/** The limits as a person would say them, in the kind of unit that `text` has. */
export function allowedBy(limit: Limit, text: string): string {
  const unit = unitShown(limit, isMetric(text));
  const inUnit = (value: number) => short(fromSi(toSi(value, limit.unit), unit));
  return `${nameOf(limit)} between ${inUnit(limit.min)} and ${inUnit(limit.max)} ${symbolOf(unit)}`.trimEnd();
}

/** The unit of the limit, or the one of the other system where that is the metric one. */
const unitShown = ({ unit }: Limit, metric: boolean): DisplayUnit =>
  metric && unit !== 'mm' ? otherUnit(unit) : unit;

/** The kind of quantity with its article. */
export function nameOf(limit: Limit): string {
  if (limit.unit === '%') return 'a percentage';
  if (limit.unit === '1') return limit.whole ? 'a whole number' : 'a number';
  return DIMENSIONS[dimensionIn(limit.unit)].name;
}

/** Four digits are enough to see which side of a limit one is on. */
const short = (value: number): string =>
  Math.abs(value) >= 1000 ? fixedDigits(value, 0) : String(Number(value.toPrecision(4)));

/** The example of a limit as typed into the file. */
export function exampleOf(limit: Limit, metric: boolean): string {
  const unit = unitShown(limit, metric);
  const value =
    unit !== limit.unit
      ? Number(fromSi(toSi(limit.example, limit.unit), unit).toPrecision(3))
      : limit.example;
  return withUnit(value, unit);
}

/** A number with its unit as typed into the file. */
export const withUnit = (value: number, unit: DisplayUnit): string =>
  unit === '1' ? String(value) : `${value} ${unit}`;
