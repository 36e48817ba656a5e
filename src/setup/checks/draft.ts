import { isRecord, type KeyPath, valueAt } from '../key-path.ts';
import type { LimitKey, QuantityAt } from '../schema/limits.ts';
import { readQuantity } from '../schema/quantity-leaf.ts';

/**
 * The file while some of it may still be wrong: what can be read is there, so that values can be checked against one
 * another although others have faults of their own.
 */
export interface Draft {
  readonly has: (path: KeyPath) => boolean;
  /** Whether there are keys under the path. */
  readonly isSection: (path: KeyPath) => boolean;
  /** The text of a single value. */
  readonly text: (path: KeyPath) => string | undefined;
  /** A quantity in SI; undefined when it is absent or has a fault. Entries of lists need their path. */
  readonly quantity: <K extends LimitKey>(key: K, path?: KeyPath) => QuantityAt<K> | undefined;
  /** How many entries a list has. */
  readonly count: (path: KeyPath) => number;
}

export function draftOf(root: unknown): Draft {
  const text = (path: KeyPath): string | undefined => {
    const value = valueAt(root, path);
    return typeof value === 'string' ? value : undefined;
  };
  return {
    has: (path) => (valueAt(root, path) ?? null) !== null,
    isSection: (path) => isRecord(valueAt(root, path)),
    text,
    quantity: (key, path = key.split('.')) => {
      const written = text(path);
      const outcome = written === undefined ? undefined : readQuantity(key, written);
      return outcome?.refusal === undefined ? outcome?.value : undefined;
    },
    count: (path) => {
      const value = valueAt(root, path);
      return Array.isArray(value) ? value.length : 0;
    },
  };
}
