import type { LimitKey, QuantityAt } from '../../setup/schema/limits.ts';
import { readQuantity } from '../../setup/schema/quantity-leaf.ts';
import { QuestionError } from './question-error.ts';

/** An option that stands for a key of the file, read as that is, within its limits. @throws QuestionError naming the option */
export function fileQuantity<K extends LimitKey>(option: string, key: K, text: string): QuantityAt<K> {
  const outcome = readQuantity(key, text);
  if (outcome.refusal === undefined) return outcome.value;
  const { reason, write } = outcome.refusal;
  // A value to write follows the option: 'a value within the limits, such as "59 degF"' has words before it.
  const [, words = '', value = write] = /^([^"]*)(".*)$/.exec(write) ?? [];
  throw new QuestionError(`{${option}}: ${reason.replace(/\.$/, '')}`, `Write ${words}{${option}} ${value}.`);
}
