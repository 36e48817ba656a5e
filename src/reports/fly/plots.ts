import type { Plot } from '../../documents/plot/plot-data.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import type { FlyFindings } from './findings.ts';

/** The path against the line of sight. */
export const heightPlot = ({ rows, aim }: FlyFindings, units: DisplayUnits): Plot => ({
  x: { label: 'range', unit: symbolOf(units.range) },
  y: { label: 'height above the line of sight', unit: symbolOf(units.smallLength) },
  series: [
    {
      name: `path, sighted in for ${rangeWords(aim, units)}`,
      kind: 'line',
      points: rows.map(({ range, height }) => ({
        x: fromSi(range, units.range),
        y: fromSi(height, units.smallLength),
      })),
    },
  ],
  markers: [{ axis: 'y', at: 0, label: 'line of sight' }],
});
