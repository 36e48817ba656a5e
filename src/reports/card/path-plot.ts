import type { Plot } from '../../documents/plot/plot-data.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import { sightIn } from '../../sight/sighted.ts';
import { roundRanges, type Stretch } from '../round-ranges.ts';
import type { Session } from '../session.ts';

/** Paths are told apart by their dashes; more would not be. Of one more the nearest is left out: it is the flattest. */
const MOST_PATHS = 4;
/** Places on each path: on paper they join to a curve. */
const POINTS = 60;

/** The paths of a few round ranges, each with its mark set, from the bow to where it hits. */
export function pathPlot({ calibration: { rig }, units }: Session, stretch: Stretch): Plot {
  const ranges = roundRanges(stretch, units, MOST_PATHS + 1).slice(-MOST_PATHS);
  const { pins, paths } = sightIn(rig, ranges);
  return {
    title: 'Paths above the line of sight, each with the mark of its range set',
    x: { label: 'range', unit: symbolOf(units.range) },
    y: { label: 'height', unit: symbolOf(units.smallLength) },
    series: ranges.map((range, i) => {
      const path = paths.path(pins[i]?.down ?? Number.NaN);
      return {
        name: rangeWords(range, units),
        kind: 'line',
        points: Array.from({ length: POINTS }, (_, k) => {
          const x = paths.start + ((range - paths.start) * k) / (POINTS - 1);
          return { x: fromSi(x, units.range), y: fromSi(path.height(x), units.smallLength) };
        }),
      };
    }),
    markers: [{ axis: 'y', at: 0, label: 'line of sight' }],
  };
}
