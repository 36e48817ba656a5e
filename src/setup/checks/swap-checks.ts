import type { LimitKey } from '../schema/limits.ts';
import { readQuantity } from '../schema/quantity-leaf.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';

/** Two lengths at the eye that are easily confused. */
const PAIR = ['bow.peep_height', 'sight.peep_to_pin'] as const;

/** Two values that stand in each other's place: one is outside its own limits, and both are inside the other's. */
export function swapFaults({ text }: Draft): readonly Fault[] {
  const [first, second] = PAIR;
  const [a, b] = [text(first.split('.')), text(second.split('.'))];
  if (a === undefined || b === undefined) return [];
  const fits = (key: LimitKey, written: string) => readQuantity(key, written).refusal === undefined;
  if (!fits(first, b) || !fits(second, a)) return [];
  return [
    { key: first, other: second, written: a },
    { key: second, other: first, written: b },
  ].flatMap(({ key, other, written }): readonly Fault[] =>
    fits(key, written)
      ? []
      : [
          {
            path: key.split('.'),
            at: 'value',
            reason: `"${written}" looks like ${other}, and the value there looks like this one`,
            allowed: 'peep_height from eye to arrow, peep_to_pin from eye to pin',
            write: `Swap ${first} and ${second}`,
          },
        ],
  );
}
