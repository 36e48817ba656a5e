import type { Launch } from '../flight/launch.ts';
import type { DisplayUnits } from '../quantities/display-units.ts';
import { formatQuantity } from '../quantities/format.ts';
import type { Metres } from '../quantities/quantity.ts';
import { QuestionError } from './asked/question-error.ts';

/** The ranges beyond which the arrow flies free. @throws QuestionError when there is none */
export function flownRanges(
  ranges: readonly Metres[],
  { position: [start] }: Launch,
  units: DisplayUnits,
): readonly Metres[] {
  const flown = ranges.filter((range) => range > start);
  if (flown.length > 0) return flown;
  throw new QuestionError(
    `{to}: closer than ${formatQuantity(start, units.range, 2)} the arrow is still on the string`,
    'Write a longer {to}, such as "20 yd".',
  );
}
