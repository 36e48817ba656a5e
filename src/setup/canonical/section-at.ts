import type { KeyPath } from '../key-path.ts';

/** Sections and lists that stand in a day as they stand in the file. */
const OF_A_DAY = ['air', 'wind', 'marks', 'speeds', 'drops'];

/** The section whose keys may stand at a path: positions in lists left out, and a build's and a day's as those of the file. */
export function sectionAt(path: KeyPath): string {
  const names = path.filter((step) => typeof step === 'string');
  const [first, second = ''] = names;
  const isOfFile = first === 'builds' || (first === 'days' && OF_A_DAY.includes(second));
  return (isOfFile ? names.slice(1) : names).join('.');
}
