import { exampleValues } from '../setup/example-values.ts';
import type { Session } from './session.ts';

/** The measurements without which no mark can be right. */
const NEEDED = ['bow.peep_height', 'arrow.diameter', 'arrow.mass', 'launch.speed', 'sight.peep_to_pin'];

const HOW = 'Put your own in; where yours is the same, take the comment behind it away.';

/** Every value that is still the one of the template, for the command that is about the file itself; none for most files. */
export function exampleWarnings({ text }: Pick<Session, 'text'>): readonly string[] {
  const keys = exampleValues(text).filter((key) => !NEEDED.includes(key));
  return keys.length === 0
    ? []
    : [`still the example's, and not needed for marks: ${keys.join(', ')}. ${HOW}`];
}

/** The needed measurements that are still the ones of the template: whatever is printed is of an invented bow. */
export function neededExampleWarnings({ text }: Pick<Session, 'text'>): readonly string[] {
  const keys = exampleValues(text).filter((key) => NEEDED.includes(key));
  if (keys.length === 0) return [];
  return [
    `${keys.join(', ')} ${keys.length === 1 ? 'is' : 'are'} still the example's: these are not your marks. ${HOW}`,
  ];
}
