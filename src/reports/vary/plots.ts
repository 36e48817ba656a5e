import { gridPoint } from '../../advice/builds/vary.ts';
import type { Plot, PlotSeries } from '../../documents/plot/plot-data.ts';
import { at } from '../../numerics/at.ts';
import type { VaryFindings } from './findings.ts';
import type { Output } from './outputs.ts';
import { shownOf } from './tables.ts';
import { heading } from './words.ts';

/** The first numeric key along, a curve for each value of the other. Null when there is nothing to draw. */
export function varyPlot({ axes, cells }: VaryFindings, output: Output | undefined): Plot | null {
  const along = axes.findIndex(({ numbers }) => numbers !== null && numbers.length > 1);
  const x = axes[along];
  if (x === undefined || output === undefined) return null;
  const other = axes.find((axis) => axis !== x);
  const series = (other?.values ?? ['']).slice(0, MOST_CURVES).map(
    (value): PlotSeries => ({
      name: other === undefined ? output.wording.label : `${heading(other.name)} ${value}`,
      kind: 'line',
      points: cells.flatMap((cell, i) => {
        const point = gridPoint(axes, i);
        const y = shownOf(cell, output);
        const number = x.numbers?.[x.values.indexOf(at(point, along))];
        if (y === null || number === undefined) return [];
        return other === undefined || point[axes.indexOf(other)] === value ? [{ x: number, y }] : [];
      }),
    }),
  );
  if (series.every(({ points }) => points.length === 0)) return null;
  return {
    x: { label: heading(x.name), unit: x.unit },
    y: { label: output.wording.label, unit: output.wording.unit },
    series,
  };
}

/** More curves cannot be told apart in a terminal. */
const MOST_CURVES = 4;
