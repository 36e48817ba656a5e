import type { QuestionName } from '../../quillpath.ts';
import type { Desk } from '../screen/desk.ts';
import type { Asked, Named } from './answer.ts';
import type { Given } from './given.ts';

/** How it is wanted: other setups beside it, for a question that compares, and the date of its document. */
export interface Beside {
  readonly others?: readonly Named[];
  /** Leave aside what was shot. */
  readonly uncalibrated?: boolean;
  readonly dated?: number | null;
}

/** What is asked of the setup that is open; null while there is none that can be read. */
export function askedOf(
  desk: Desk,
  question: QuestionName,
  given: Given,
  { others = [], uncalibrated = false, dated = null }: Beside = {},
): Asked | null {
  const setup = desk.sound.value();
  if (setup === null) return null;
  return {
    question,
    setups: [setup, ...others],
    given,
    units: desk.units.value(),
    uncalibrated,
    dated,
  };
}
