import type { Plot } from '../../documents/plot/plot-data.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import type { SwingFindings } from './findings.ts';

/** How the nose swings after each bad start, in the direction in which that start throws it. */
export const swingPlot = ({ disturbed }: SwingFindings, { range }: DisplayUnits): Plot => ({
  x: { label: 'range', unit: symbolOf(range) },
  y: { label: 'nose off the path, right or up', unit: '°' },
  series: disturbed.map(({ name, trace }) => ({
    name,
    kind: 'line',
    points: trace.map((point) => ({
      x: fromSi(point.range, range),
      y: fromSi(name === 'tail high' ? point.up : point.right, 'deg'),
    })),
  })),
});
