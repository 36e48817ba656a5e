import type { Plot, PlotSeries } from '../../documents/plot/plot-data.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import type { SlopeFindings } from './findings.ts';

/** The mark to set at the farthest range against the slope, beside the cosine rule; slopes without a mark are left out. */
export function slopePlot({ rows }: SlopeFindings, units: DisplayUnits): Plot {
  const farthest = Math.max(...rows.map(({ mark }) => mark.range));
  const far = rows.flatMap(({ mark: { range, slope, markRange, cosineRange } }) =>
    range === farthest && markRange !== null ? [{ slope, markRange, cosineRange }] : [],
  );
  const line = (name: string, of: (mark: (typeof far)[number]) => number): PlotSeries => ({
    name,
    kind: 'line',
    points: far.map((mark) => ({ x: fromSi(mark.slope, 'deg'), y: fromSi(of(mark), units.range) })),
  });
  return {
    x: { label: 'slope, uphill positive', unit: '°' },
    y: { label: `mark to set at ${rangeWords(farthest, units)}`, unit: symbolOf(units.range) },
    series: [
      line('what hits', ({ markRange }) => markRange),
      line('cosine rule', ({ cosineRange }) => cosineRange),
    ],
  };
}
