import { TUNING_STEPS, type TuningStep } from '../../bow/tuning-steps.ts';
import { isRecord, type KeyPath, valueAt } from '../key-path.ts';
import { LIMITS, type LimitKey } from '../schema/limits.ts';
import { allowedBy, exampleOf } from '../schema/refusal.ts';
import { COMMON_KEYS, keysOfStep, STEP_KEYS } from '../tuning/step-keys.ts';
import { draftOf } from './draft.ts';
import type { Fault } from './fault.ts';
import { faultsWithin } from './tuning-entry-checks.ts';

/** What the entries of the tuning log must hold, each for its step. */
export function tuningFaults(root: unknown): readonly Fault[] {
  const log = valueAt(root, ['tuning', 'log']);
  if (!Array.isArray(log)) return [];
  const draft = draftOf(root);
  return log.flatMap((entry: unknown, i): readonly Fault[] => {
    if (!isRecord(entry)) return [];
    const path: KeyPath = ['tuning', 'log', i];
    const step = TUNING_STEPS.find((each) => each === String(entry['step']).trim());
    if (step === undefined) return [];
    return [
      ...keysOfOthers(entry, step, path),
      ...missingKeys(entry, step, path),
      ...faultsWithin(draft, step, path),
    ];
  });
}

/** Keys that are known but belong to another step than that of their entry. */
const keysOfOthers = (
  entry: Readonly<Record<string, unknown>>,
  step: TuningStep,
  path: KeyPath,
): readonly Fault[] =>
  Object.keys(entry).flatMap((key): readonly Fault[] => {
    if ([...COMMON_KEYS, ...keysOfStep(step)].includes(key)) return [];
    const owners = TUNING_STEPS.filter((other) => keysOfStep(other).includes(key));
    const [owner] = owners;
    if (owner === undefined) return [];
    return [
      {
        path: [...path, key],
        at: 'key',
        reason: `\`${key}\` belongs to the step ${owners.join(' or ')}; this entry is ${step}`,
        allowed: keysOfStep(step).join(', '),
        write: `Remove it, or write "step: ${owner}"`,
      },
    ];
  });

const WHY_NEEDED: Readonly<Record<string, string>> = {
  extension: 'is missing: where the pin stood decides what the shots mean',
  left: 'is missing: torque shows between shots turned left and shots turned right',
  right: 'is missing: torque shows between shots turned left and shots turned right',
};

const LISTS: readonly string[] = ['serving', 'left', 'right'];

const missingKeys = (
  entry: Readonly<Record<string, unknown>>,
  step: TuningStep,
  path: KeyPath,
): readonly Fault[] =>
  STEP_KEYS[step].needed
    .filter((key) => (entry[key] ?? null) === null)
    .map((key) => missing(key, path, WHY_NEEDED[key]));

/** A key that the entry needs. */
function missing(key: string, path: KeyPath, reason = 'is missing'): Fault {
  const limit = limitOf(key);
  if (limit === null)
    return {
      path: [...path, key],
      at: 'missing',
      reason,
      allowed: key === 'line' ? 'vertical or horizontal' : 'a list of arrows, each with its mass',
      write: `Add "${key}: ${key === 'line' ? 'vertical' : '[{ mass: 449.1 gr, runout: 0.002 in }, ...]'}" to that entry`,
    };
  const example = exampleOf(limit, false);
  return {
    path: [...path, key],
    at: 'missing',
    reason,
    allowed: `${allowedBy(limit, '')}: ${limit.what}`,
    write: `Add "${key}: ${LISTS.includes(key) ? `[${example}]` : example}" to that entry`,
  };
}

const limitOf = (key: string) => {
  const path = `tuning.log.${key}`;
  return isLimitKey(path) ? LIMITS[path] : null;
};
const isLimitKey = (key: string): key is LimitKey => Object.hasOwn(LIMITS, key);
