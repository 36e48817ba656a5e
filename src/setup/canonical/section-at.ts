import type { KeyPath } from '../key-path.ts';

/** The section whose keys may stand at a path: positions in lists left out, and a build's as those of the file. */
export function sectionAt(path: KeyPath): string {
  const names = path.filter((step) => typeof step === 'string');
  return (names[0] === 'builds' ? names.slice(1) : names).join('.');
}
