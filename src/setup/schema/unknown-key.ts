import { nearestWord } from '../../quantities/nearest-word.ts';
import type { Fault } from '../checks/fault.ts';
import { type KeyPath, valueAt } from '../key-path.ts';
import { keysAt } from './known-keys.ts';
import { LIMITS, type LimitKey } from './limits.ts';
import { readQuantity } from './quantity-leaf.ts';
import { setupSchema } from './schema.ts';

/** What archers call a thing, and the key for it; common practice, no source. */
const CALLED: Readonly<Record<string, readonly string[]>> = {
  draw_weight: ['peak_draw_weight'],
  spine: ['deflection'],
  weight: ['mass', 'peak_draw_weight'],
  grains: ['mass'],
  gpi: ['mass_per_length'],
  distance: ['range'],
  fletching: ['vanes'],
  feathers: ['vanes'],
  velocity: ['speed'],
};

/** What to say of a key that the section does not have. */
export function unknownKey(section: KeyPath, key: string, root: unknown): Fault {
  const path = [...section, key];
  const known = keysAt(setupSchema, section);
  const base = key.replace(/_sd$/, '');
  const ending = key.slice(base.length);
  const called = Object.hasOwn(CALLED, base) ? (CALLED[base] ?? []) : [];
  const nearest = called.find((name) => known.includes(name)) ?? nearestWord(base, known);
  const meant = nearest && `${nearest}${ending}`;
  const fault: Fault = {
    path,
    at: 'key',
    reason: `there is no key "${key}" here`,
    allowed: known.join(', '),
    write:
      meant === undefined ? elsewhere(key) : `Write "${meant}${valueMeant([...section, meant], root, path)}"`,
  };
  return meant === undefined ? fault : { ...fault, meant: [...section, meant] };
}

/** The value to write with the key that was meant, when the one that is there would not do. */
function valueMeant(meant: KeyPath, root: unknown, path: KeyPath): string {
  const key = meant.filter((step) => typeof step === 'string').join('.');
  const text = valueAt(root, path);
  if (!isLimitKey(key) || typeof text !== 'string') return '';
  const better = /^"([^"]*)"$/.exec(readQuantity(key, text).refusal?.write ?? '');
  return better === null ? '' : `: ${better[1]}`;
}

const isLimitKey = (key: string): key is LimitKey => Object.hasOwn(LIMITS, key);

function elsewhere(key: string): string {
  const sections = sectionsWith(key).map((name) => `"${name}:"`);
  return sections.length === 0 ? 'Remove it' : `Move it under ${sections.join(' or ')}`;
}

/** The top sections that do have such a key. */
const sectionsWith = (key: string): readonly string[] =>
  keysAt(setupSchema, []).filter((section) => keysAt(setupSchema, [section]).includes(key));
