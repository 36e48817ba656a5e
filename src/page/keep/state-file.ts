import type { UnitSystem } from '../../quillpath.ts';
import type { Kept } from '../text/kept.ts';

/** All setups of the device in one file. */
export const stateText = (kept: readonly Kept[], units: UnitSystem): string =>
  `${JSON.stringify({ quillpath: 1, units, setups: kept.map(({ name, text }) => ({ name, text })) }, null, 2)}\n`;

/** Larger files are no setups, and are not looked into. */
export const LARGEST_FILE = 16_000_000;

/** What is in a file: all setups of another device, or one setup. */
export function setupsIn(
  fileName: string,
  content: string,
): readonly { readonly name: string; readonly text: string }[] {
  const alone = [{ name: fileName, text: content }];
  if (!fileName.endsWith('.json')) return alone;
  let parsed: unknown;
  try {
    parsed = JSON.parse(content);
  } catch {
    return alone;
  }
  if (typeof parsed !== 'object' || parsed === null || !('setups' in parsed) || !Array.isArray(parsed.setups))
    return alone;
  const found: readonly unknown[] = parsed.setups;
  return found.flatMap((each) =>
    typeof each === 'object' &&
    each !== null &&
    'name' in each &&
    'text' in each &&
    typeof each.name === 'string' &&
    typeof each.text === 'string'
      ? [{ name: each.name, text: each.text }]
      : [],
  );
}
