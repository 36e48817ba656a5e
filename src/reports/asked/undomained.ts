import { DomainError } from '../../quantities/domain-error.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { domainWords } from '../domain-words.ts';
import type { Session } from '../session.ts';
import type { Options } from './option.ts';
import { QuestionError } from './question-error.ts';

type Texts = Readonly<Record<string, unknown>>;

/** Options that say how near the nearest of the ranges is, the likeliest first. */
const NEAREST = ['from', 'at', 'aim', 'to'];

/**
 * A value outside what can be computed, as a fault of the option that it comes from and in the units of the answer. Another
 * error, and one to which no option that was written can have led, is given back as it is.
 *
 * @param given the options that were written
 * @param asked all of them
 */
export function undomained(
  error: unknown,
  { options, given, asked }: { readonly options: Options; readonly given: Texts; readonly asked: Texts },
  { units }: Pick<Session, 'units'>,
): unknown {
  if (!(error instanceof DomainError)) return error;
  const { beyond } = error;
  const ranging = NEAREST.filter((name) => Object.hasOwn(options, name) && typeof asked[name] === 'string');
  const nearest = ranging.find((name) => Object.hasOwn(given, name)) ?? ranging[0];
  if (beyond !== undefined && nearest !== undefined)
    return new QuestionError(
      `{${nearest}}: ${String(asked[nearest])} is too near, as the arrow leaves the bow ` +
        `${formatQuantity(beyond, units.range, 2)} from the eye`,
      `Write {${nearest}} "5 yd" or another longer range.`,
    );
  const written = Object.entries(given).filter(([name]) => Object.hasOwn(options, name));
  if (written.length === 0) return error;
  const told = written.map(([name, value]) => `{${name}} ${String(value)}`).join(', ');
  return new QuestionError(
    `${told}: with this there is no answer, because ${domainWords(error, units)}`,
    'Write values nearer to the usual ones.',
  );
}
