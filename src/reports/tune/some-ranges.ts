import type { DisplayUnits } from '../../quantities/display-units.ts';
import { YARD } from '../../quantities/exact.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { settingsFor } from '../../sight/marks.ts';
import { asFarAsItGoes } from '../../sight/reach.ts';
import type { Rig } from '../../sight/rig.ts';

/** Round ranges of an evening, as far as the arrow goes. */
export function someRanges(rig: Rig, { range }: Pick<DisplayUnits, 'range'>): readonly Metres[] {
  const ranges = [20, 30, 40, 50, 60, 80, 100].map((count) => si<'m'>(count * (range === 'yd' ? YARD : 1)));
  return asFarAsItGoes(rig, ranges, (reached) => settingsFor(rig, reached)).solved.map(
    (setting) => setting.range,
  );
}
