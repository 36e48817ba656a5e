import type { KeyPath } from '../key-path.ts';

/** Sections that a day may have of its own, with the keys of the file's. */
const OF_A_DAY = ['marks', 'speeds', 'drops', 'air', 'wind'];

/** The section whose keys may stand at a path: positions in lists left out, those of a build or a day as the file's own. */
export function sectionAt(path: KeyPath): string {
  const [first, ...rest] = path.filter((step) => typeof step === 'string');
  const isOwn = first === 'builds' || (first === 'days' && OF_A_DAY.includes(String(rest[0])));
  return (first === undefined || isOwn ? rest : [first, ...rest]).join('.');
}
