import { nearestWord } from '../../quantities/nearest-word.ts';
import { calledIn, plainName } from '../canonical/called.ts';
import { sectionAt } from '../canonical/section-at.ts';
import type { Fault } from '../checks/fault.ts';
import { dotted, type KeyPath, valueAt } from '../key-path.ts';
import { belongsElsewhere } from './belongs-elsewhere.ts';
import { keysAt } from './known-keys.ts';
import { LIMITS, type LimitKey } from './limits.ts';
import { readQuantity } from './quantity-leaf.ts';
import { setupSchema } from './schema.ts';

/** What to say of a key that the section does not have. */
export function unknownKey(section: KeyPath, key: string, root: unknown): Fault {
  const path = [...section, key];
  const known = keysAt(setupSchema, section);
  const base = key.replace(/_sd$/, '');
  const ending = key.slice(base.length);
  const fault: Fault = {
    path,
    at: 'key',
    reason: `there is no key "${key}" here`,
    allowed: known.join(', '),
    write: '',
  };
  const called = calledIn(sectionAt(path.slice(0, -1)), plainName(base)).map(dotted);
  const given = called.find(
    (name) => valueAt(root, [...section, ...`${name}${ending}`.split('.')]) !== undefined,
  );
  if (given !== undefined)
    return {
      ...fault,
      reason: `"${key}" is another name for ${given}, which is given as well`,
      write: 'Keep the one that is right and move the other behind a #',
    };
  const belongs = belongsElsewhere(section, base);
  const nearest = belongs === undefined ? nearestWord(base, known) : undefined;
  if (nearest === undefined) return { ...fault, ...(belongs ?? NO_USE) };
  const meant = [...section, `${nearest}${ending}`];
  return { ...fault, write: `Write "${meant.at(-1)}${valueMeant(meant, root, path)}"`, meant };
}

/** A measurement is not to be lost because the program has no use for it. */
const NO_USE = { write: 'Move it behind a # to keep it as a note: quillpath has no use for it' };

/** The value to write with the key that was meant, when the one that is there would not do. */
function valueMeant(meant: KeyPath, root: unknown, path: KeyPath): string {
  const key = sectionAt(meant);
  const text = valueAt(root, path);
  if (!isLimitKey(key) || typeof text !== 'string') return '';
  const better = /^"([^"]*)"$/.exec(readQuantity(key, text).refusal?.write ?? '');
  return better === null ? '' : `: ${better[1]}`;
}

const isLimitKey = (key: string): key is LimitKey => Object.hasOwn(LIMITS, key);
