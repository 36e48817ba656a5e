import type { Dimension, SiUnit } from '../../quantities/dimension.ts';
import { type DisplayUnit, siUnitOf, toSi } from '../../quantities/format.ts';
import type { Quantity } from '../../quantities/quantity.ts';

/** What a key of the setup file may hold: wide of every archer's values, so that only a slip is refused. */
export interface Limit {
  /** What the number is, in the archer's words: a fragment without a full stop, for documents, forms and comments. */
  readonly what: string;
  /** What is used when the file does not have the key, where no row of defaults.ts says it. */
  readonly otherwise?: string;
  /** The unit of the numbers below, and the first one shown as an example. */
  readonly unit: LimitUnit;
  readonly min: number;
  readonly max: number;
  /** What a common setup has there. */
  readonly example: number;
  /** Why nothing outside can be meant, as a whole sentence. */
  readonly why: string;
  readonly whole?: true;
  /** A number without a unit is refused even where one unit alone would fit: too small a size to be guessed. */
  readonly unitNeeded?: true;
}

/** The units that limits are written in, each with the one a person of the other system would write. */
const OTHER_UNIT = {
  in: 'mm',
  ft: 'm',
  yd: 'm',
  mm: 'in',
  gr: 'g',
  gpi: 'g/m',
  fps: 'm/s',
  mph: 'm/s',
  deg: 'deg',
  degF: 'degC',
  inHg: 'hPa',
  lbf: 'N',
  'fps/degF': 'm/s/K',
  '%': '1',
  '1': '1',
} as const satisfies Partial<Record<DisplayUnit, DisplayUnit>>;

export type LimitUnit = keyof typeof OTHER_UNIT;

/** The dimension behind the SI unit behind a limit's unit. */
const DIMENSION_OF = {
  m: 'length',
  kg: 'mass',
  'kg/m': 'massPerLength',
  'm/s': 'speed',
  rad: 'angle',
  K: 'temperature',
  Pa: 'pressure',
  N: 'force',
  'm/s/K': 'speedPerTemperature',
  '1': 'ratio',
} as const satisfies Record<string, Dimension>;

export type DimensionOf<U extends LimitUnit> = (typeof DIMENSION_OF)[ReturnType<typeof siUnitOf<U>>];
export type QuantityIn<U extends LimitUnit> = Quantity<SiUnit[DimensionOf<U>]>;

export const dimensionIn = <U extends LimitUnit>(unit: U): DimensionOf<U> => DIMENSION_OF[siUnitOf(unit)];
export const otherUnit = (unit: LimitUnit): DisplayUnit => OTHER_UNIT[unit];

/** Whether an SI value is within the limit; the margin forgives the rounding of a unit's factor. */
export function isWithin(limit: Limit, value: number): boolean {
  const min = toSi(limit.min, limit.unit);
  const max = toSi(limit.max, limit.unit);
  const margin = 1e-9 * (max - min);
  return value >= min - margin && value <= max + margin;
}
