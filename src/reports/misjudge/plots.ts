import type { HitChance } from '../../advice/range/hit-chance.ts';
import type { Plot, PlotSeries } from '../../documents/plot/plot-data.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import type { MisjudgeFindings } from './findings.ts';

/** Hits against range, with the range guessed and with it known. */
export function hitPlot({ rows }: MisjudgeFindings, { range }: DisplayUnits): Plot {
  const line = (name: string, of: (hit: HitChance) => number): PlotSeries => ({
    name,
    kind: 'line',
    points: rows.map(({ hit }) => ({ x: fromSi(hit.range, range), y: fromSi(of(hit), '%') })),
  });
  return {
    x: { label: 'range', unit: symbolOf(range) },
    y: { label: 'hits', unit: '%' },
    series: [
      line('all together', ({ chance }) => chance),
      line('range known', ({ without }) => without.guess),
    ],
    markers: [{ axis: 'y', at: 0, label: 'none' }],
  };
}
