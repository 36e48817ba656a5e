import { SCALE_QUANTITY } from '../calibration/scale-guess.ts';
import { DomainError } from '../quantities/domain-error.ts';
import type { KeyPath } from './key-path.ts';
import { SetupError } from './problem.ts';
import { problemOf } from './setup-problems.ts';
import { readYaml } from './yaml/yaml-text.ts';

interface Told {
  readonly path: KeyPath;
  readonly reason: string;
  readonly allowed: string;
  readonly write: string;
}

/** What shows only when the bow is put together, by the quantity that cannot be. */
const TOLD: Readonly<Record<string, Told>> = {
  [SCALE_QUANTITY]: {
    path: ['sight', 'scale', 'travel_per_unit'],
    reason: 'cannot be found from the readings of the marks, which do not grow the way "increases" says',
    allowed: 'readings that together tell how far one unit of the scale moves the pin',
    write: 'Correct "increases", or the reading or the range that is wrong, or write the travel_per_unit',
  },
};

/**
 * Values each within its limits that go together in no bow, as a problem of the file, in its place; another error comes back as
 * it is.
 */
export function unassembled(error: unknown, text: string, name: string): unknown {
  if (!(error instanceof DomainError)) return error;
  const told = TOLD[error.quantity] ?? {
    path: [],
    reason: `has values that go together in no bow or arrow: see its ${error.quantity.replace(/ \(.*\)$/, '')}`,
    allowed: 'values of one bow and its arrow',
    write: 'Check them for a wrong unit',
  };
  const place = readYaml(text.replace(/^\ufeff/, '')).locate(told.path);
  return new SetupError(name, [problemOf(name, told.path, { ...told, ...place, found: '' })]);
}
