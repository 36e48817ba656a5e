import type { DisplayUnits } from '../../quantities/display-units.ts';
import { type DisplayUnit, fromSi, symbolOf } from '../../quantities/format.ts';
import { isRecord } from '../../setup/key-path.ts';
import { otherUnit } from '../../setup/schema/limit.ts';
import { LIMITS, type LimitKey } from '../../setup/schema/limits.ts';
import type { BuildEntry } from '../../setup/schema/schema.ts';

/** What a build changes, as the file writes it: "point mass 175 gr, vanes height 0.6 in". */
export function buildChanges({ arrow, launch }: BuildEntry, units: DisplayUnits): string {
  return [...leaves(arrow, 'arrow', units), ...leaves(launch, 'launch', units)].join(', ');
}

function leaves(value: unknown, path: string, units: DisplayUnits): readonly string[] {
  if (isRecord(value))
    return Object.entries(value).flatMap(([key, inner]) => leaves(inner, `${path}.${key}`, units));
  const name = path.replace(/^(arrow\.parts|arrow|launch)\./, '').replace(/[._]/g, ' ');
  if (typeof value === 'string' || typeof value === 'boolean') return [`${name} ${value}`];
  if (typeof value === 'number' && isLimited(path))
    return [`${name} ${inUnit(value, LIMITS[path].unit, units)}`];
  return Array.isArray(value) ? [name] : [];
}

const isLimited = (path: string): path is LimitKey => Object.hasOwn(LIMITS, path);

function inUnit(
  value: number,
  unit: (typeof LIMITS)[LimitKey]['unit'],
  { smallLength }: DisplayUnits,
): string {
  const shown: DisplayUnit = smallLength === 'in' ? unit : otherUnit(unit);
  return `${Number(fromSi(value, shown).toPrecision(4))} ${symbolOf(shown)}`.trimEnd();
}
