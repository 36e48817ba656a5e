import type { UnitSystem } from '../../quantities/display-units.ts';
import { spokenNumber } from '../../quantities/spoken-number.ts';
import { otherUnit } from '../../setup/schema/limit.ts';
import { LIMITS, type LimitKey } from '../../setup/schema/limits.ts';

/** An answer with the unit that was asked for behind a number without one: the question has just named it. */
export function withBareUnit(key: LimitKey, typed: string, units: UnitSystem): string {
  const { unit } = LIMITS[key];
  const number = spokenNumber(typed);
  const [value, other] = number?.values ?? [];
  if (unit === '1' || number?.rest !== '' || value === undefined || other !== undefined) return typed;
  return `${value} ${units === 'metric' && unit !== 'mm' ? otherUnit(unit) : unit}`;
}
