/** Keys and positions in lists, from the top of the file. */
export type KeyPath = readonly (string | number)[];

export const dotted = (path: KeyPath): string => path.join('.');

/** The path as a person counts: `marks, entry 2: reading`. */
export const counted = (path: KeyPath): string =>
  path
    .map((step, i) => {
      if (typeof step === 'number') return `, entry ${step + 1}`;
      if (i === 0) return step;
      return typeof path[i - 1] === 'number' ? `: ${step}` : `.${step}`;
    })
    .join('');

/** Plain data with keys: what a section of the file becomes. */
export type Section = Readonly<Record<string, unknown>>;

export const isRecord = (value: unknown): value is Section =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What stands at a path, or undefined. */
export function valueAt(root: unknown, path: KeyPath): unknown {
  let value = root;
  for (const step of path) {
    if (Array.isArray(value)) value = value[Number(step)];
    else if (isRecord(value) && Object.hasOwn(value, step)) value = value[step];
    else return undefined;
  }
  return value;
}

/** A copy with another value at a path; sections on the way are made, and undefined returned when the path cannot be. */
export function withValueAt(root: unknown, path: readonly string[], value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (Array.isArray(root)) {
    if (!/^\d+$/.test(step) || Number(step) >= root.length) return undefined;
    const changed = withValueAt(root[Number(step)], rest, value);
    return changed === undefined ? undefined : root.with(Number(step), changed);
  }
  if (root !== undefined && root !== null && !isRecord(root)) return undefined;
  const changed = withValueAt(
    isRecord(root) && Object.hasOwn(root, step) ? root[step] : undefined,
    rest,
    value,
  );
  return changed === undefined ? undefined : { ...root, [step]: changed };
}
