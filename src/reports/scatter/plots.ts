import type { Plot } from '../../documents/plot/plot-data.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import { bothOf, type ScatterFindings } from './findings.ts';
import { vaneWords } from './words.ts';

/** Group size against range, a line for each fletching. */
export function groupPlot(found: ScatterFindings, units: DisplayUnits): Plot {
  return {
    x: { label: 'range', unit: symbolOf(units.range) },
    y: { label: 'group', unit: symbolOf(units.smallLength) },
    series: bothOf(found).map(({ vanes, ranges }) => ({
      name: vaneWords(vanes),
      kind: 'line',
      points: [
        { x: 0, y: 0 },
        ...ranges.map(({ range, group }) => ({
          x: fromSi(range, units.range),
          y: fromSi(group, units.smallLength),
        })),
      ],
    })),
  };
}
