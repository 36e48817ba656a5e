import { sectionAt } from './canonical/section-at.ts';
import { isRecord, type KeyPath } from './key-path.ts';
import { LIMITS, type LimitKey } from './schema/limits.ts';
import { readQuantity } from './schema/quantity-leaf.ts';

/** A value or a key that was not typed as the program writes it, and what it was taken for. */
export interface ReadAs {
  /** `marks.1.lateral`; entries of lists by their number from 0. */
  readonly path: string;
  /** As it was typed: `1" left`. */
  readonly found: string;
  /** As it is to be typed: `-1 in`. */
  readonly readAs: string;
}

/** Every quantity of a file that was worked out of what was typed. */
export function quantitiesReadAs(
  value: unknown,
  path: KeyPath = [],
): readonly (Omit<ReadAs, 'path'> & { readonly path: KeyPath })[] {
  if (Array.isArray(value)) return value.flatMap((entry, i) => quantitiesReadAs(entry, [...path, i]));
  if (isRecord(value))
    return Object.entries(value).flatMap(([key, child]) => quantitiesReadAs(child, [...path, key]));
  const key = limitKeyAt(path);
  if (typeof value !== 'string' || key === undefined) return [];
  const outcome = readQuantity(key, value);
  return outcome.refusal !== undefined || outcome.readAs === undefined
    ? []
    : [{ path, found: value, readAs: outcome.readAs }];
}

function limitKeyAt(path: KeyPath): LimitKey | undefined {
  const key = sectionAt(path);
  return isLimitKey(key) ? key : undefined;
}

const isLimitKey = (key: string): key is LimitKey => Object.hasOwn(LIMITS, key);
