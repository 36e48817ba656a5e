import type { Plot, PlotSeries } from '../../documents/plot/plot-data.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import type { WindFindings } from './findings.ts';
import { hourOf } from './words.ts';

/** Winds from straight across and from thirty degrees ahead of that, either side. */
const HOURS: readonly number[] = [9, 10, 2, 3];

export const driftPlot = ({ effects }: WindFindings, units: DisplayUnits): Plot => ({
  x: { label: 'range', unit: symbolOf(units.range) },
  y: { label: 'drift, right positive', unit: symbolOf(units.smallLength) },
  series: HOURS.map(
    (hour): PlotSeries => ({
      name: `from ${hourOf(hour)}`,
      kind: 'line',
      points: (effects[hour]?.rows ?? []).map(({ range, lateral }) => ({
        x: fromSi(range, units.range),
        y: fromSi(lateral, units.smallLength),
      })),
    }),
  ),
  markers: [{ axis: 'y', at: 0, label: 'calm' }],
});
