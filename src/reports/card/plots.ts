import type { Plot } from '../../documents/plot/plot-data.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import type { MarkPath } from './paths.ts';

export const pathPlot = (paths: readonly MarkPath[], units: DisplayUnits): Plot => ({
  title: 'Paths above the line of sight, each with the mark of its range set',
  x: { label: 'range', unit: symbolOf(units.range) },
  y: { label: 'height', unit: symbolOf(units.smallLength) },
  series: paths.map(({ range, points }) => ({
    name: rangeWords(range, units),
    kind: 'line',
    points: points.map((point) => ({
      x: fromSi(point.range, units.range),
      y: fromSi(point.height, units.smallLength),
    })),
  })),
  markers: [{ axis: 'y', at: 0, label: 'line of sight' }],
});
