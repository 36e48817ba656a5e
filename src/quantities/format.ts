import { type Quantity, si } from './quantity.ts';
import { parseUnit } from './units.ts';

interface UnitFacts {
  /** As a person reads it. */
  readonly symbol: string;
  /** As mathjs reads it; the factor comes from there, so that there is one truth. */
  readonly mathjs: string;
  /** The SI unit it converts to and from. */
  readonly si: string;
}

/** Every unit that the tool can show. */
const UNITS = {
  m: { symbol: 'm', mathjs: 'm', si: 'm' },
  cm: { symbol: 'cm', mathjs: 'cm', si: 'm' },
  mm: { symbol: 'mm', mathjs: 'mm', si: 'm' },
  yd: { symbol: 'yd', mathjs: 'yd', si: 'm' },
  ft: { symbol: 'ft', mathjs: 'ft', si: 'm' },
  in: { symbol: 'in', mathjs: 'in', si: 'm' },
  thou: { symbol: 'thousandths', mathjs: 'mil', si: 'm' },
  kg: { symbol: 'kg', mathjs: 'kg', si: 'kg' },
  g: { symbol: 'g', mathjs: 'g', si: 'kg' },
  gr: { symbol: 'gr', mathjs: 'gr', si: 'kg' },
  lb: { symbol: 'lb', mathjs: 'lb', si: 'kg' },
  'm/s': { symbol: 'm/s', mathjs: 'm/s', si: 'm/s' },
  fps: { symbol: 'ft/s', mathjs: 'fps', si: 'm/s' },
  mph: { symbol: 'mph', mathjs: 'mph', si: 'm/s' },
  'km/h': { symbol: 'km/h', mathjs: 'km/h', si: 'm/s' },
  rad: { symbol: 'rad', mathjs: 'rad', si: 'rad' },
  mrad: { symbol: 'mrad', mathjs: 'mrad', si: 'rad' },
  deg: { symbol: '°', mathjs: 'deg', si: 'rad' },
  arcmin: { symbol: 'arcmin', mathjs: 'arcmin', si: 'rad' },
  K: { symbol: 'K', mathjs: 'K', si: 'K' },
  degC: { symbol: '°C', mathjs: 'degC', si: 'K' },
  degF: { symbol: '°F', mathjs: 'degF', si: 'K' },
  Pa: { symbol: 'Pa', mathjs: 'Pa', si: 'Pa' },
  hPa: { symbol: 'hPa', mathjs: 'hPa', si: 'Pa' },
  inHg: { symbol: 'inHg', mathjs: 'inHg', si: 'Pa' },
  N: { symbol: 'N', mathjs: 'N', si: 'N' },
  lbf: { symbol: 'lbf', mathjs: 'lbf', si: 'N' },
  J: { symbol: 'J', mathjs: 'J', si: 'J' },
  ftlbf: { symbol: 'ft lbf', mathjs: 'ftlbf', si: 'J' },
  'kg m/s': { symbol: 'kg m/s', mathjs: 'kg m/s', si: 'kg m/s' },
  'lbf s': { symbol: 'lbf s', mathjs: 'lbf s', si: 'kg m/s' },
  'kg/m3': { symbol: 'kg/m³', mathjs: 'kg/m^3', si: 'kg/m3' },
  'lb/ft3': { symbol: 'lb/ft³', mathjs: 'lb/ft^3', si: 'kg/m3' },
  'kg/m': { symbol: 'kg/m', mathjs: 'kg/m', si: 'kg/m' },
  'g/m': { symbol: 'g/m', mathjs: 'g/m', si: 'kg/m' },
  gpi: { symbol: 'gr/in', mathjs: 'gpi', si: 'kg/m' },
  'kg m2': { symbol: 'kg m²', mathjs: 'kg m^2', si: 'kg m2' },
  'N m2': { symbol: 'N m²', mathjs: 'N m^2', si: 'N m2' },
  'm/s/K': { symbol: 'm/s per K', mathjs: 'm/s/K', si: 'm/s/K' },
  'fps/degF': { symbol: 'ft/s per °F', mathjs: 'fps/degF', si: 'm/s/K' },
  s: { symbol: 's', mathjs: 's', si: 's' },
  ms: { symbol: 'ms', mathjs: 'ms', si: 's' },
  'rad/s': { symbol: 'rad/s', mathjs: 'rad/s', si: 'rad/s' },
  rpm: { symbol: 'rpm', mathjs: 'rpm', si: 'rad/s' },
  'rad/m': { symbol: 'rad/m', mathjs: 'rad/m', si: 'rad/m' },
  'rev/yd': { symbol: 'rev/yd', mathjs: 'cycle/yd', si: 'rad/m' },
  '%': { symbol: '%', mathjs: 'percent', si: '1' },
  '1': { symbol: '', mathjs: 'unity', si: '1' },
} as const satisfies Readonly<Record<string, UnitFacts>>;

export type DisplayUnit = keyof typeof UNITS;
type SiOf<U extends DisplayUnit> = (typeof UNITS)[U]['si'];

/** SI value = scale × value + offset; only the temperatures have an offset. */
interface Conversion {
  readonly scale: number;
  readonly offset: number;
}
const conversions = new Map<DisplayUnit, Conversion>();

function conversionOf(unit: DisplayUnit): Conversion {
  const known = conversions.get(unit);
  if (known !== undefined) return known;
  const { mathjs, si: target } = UNITS[unit];
  const found = {
    scale: parseUnit(`1 ${mathjs}`).value,
    offset: target === 'K' ? parseUnit(`0 ${mathjs}`).toNumber('K') : 0,
  };
  conversions.set(unit, found);
  return found;
}

/**
 * A number in SI from a number in a display unit.
 *
 * @source the factors of mathjs, and the definitions in units.ts
 * @checked reference/unit-definitions
 */
export function toSi<U extends DisplayUnit>(value: number, unit: U): Quantity<SiOf<U>> {
  const { scale, offset } = conversionOf(unit);
  return si(value * scale + offset);
}

/**
 * A number in a display unit from one in that unit's SI unit. It takes a plain number because a table's columns mix units.
 *
 * @checked reference/unit-definitions
 */
export function fromSi(value: number, unit: DisplayUnit): number {
  const { scale, offset } = conversionOf(unit);
  return (value - offset) / scale;
}

/** The unit as a person reads it: `fps` is shown as ft/s. */
export const symbolOf = (unit: DisplayUnit): string => UNITS[unit].symbol;

/** The SI unit behind a display unit. */
export const siUnitOf = <U extends DisplayUnit>(unit: U): SiOf<U> => UNITS[unit].si;

/** A plain decimal with a stated number of digits after the point, and no minus sign before a zero. */
export const fixedDigits = (value: number, digits: number): string =>
  value.toFixed(digits).replace(/^-(?=[0.]*$)/, '');

/** An SI value in a display unit with its symbol: 0.7239 m in `in` with 1 digit is "28.5 in", 0.35 rad in degrees "20°". */
export function formatQuantity(value: number, unit: DisplayUnit, digits: number): string {
  const number = fixedDigits(fromSi(value, unit), digits);
  return unit === 'deg' ? `${number}${symbolOf(unit)}` : `${number} ${symbolOf(unit)}`.trimEnd();
}
