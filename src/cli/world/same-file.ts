import { realpathSync, statSync } from 'node:fs';

/** Whether two names are of one file, through links of either kind; false where either is of none. */
export function isSameFile(one: string, other: string): boolean {
  try {
    const [first, second] = [statSync(one), statSync(other)];
    if (!first.isFile() || !second.isFile()) return false;
    return (
      realpathSync(one) === realpathSync(other) || (first.ino === second.ino && first.dev === second.dev)
    );
  } catch {
    return false;
  }
}
