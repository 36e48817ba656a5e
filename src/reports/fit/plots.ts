import type { Residual } from '../../calibration/fit.ts';
import type { Plot, PlotPoint, PlotSeries } from '../../documents/plot/plot-data.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { type FitFindings, NEXT_ARROWS } from './findings.ts';

/** Groups shot with the sight at a reading or at a pencil line. */
const shotIn = ({ marks, pencil }: FitFindings): readonly Residual[] =>
  [...marks, ...pencil].map(({ residual }) => residual);

/** How far each group lies from the model, with its error bar. */
export const residualPlot = (found: FitFindings, { range: far, smallLength }: DisplayUnits): Plot => ({
  x: { label: 'range', unit: symbolOf(far) },
  y: { label: 'observed less predicted', unit: symbolOf(smallLength) },
  series: [
    {
      name: 'shot marks, ± one standard error',
      kind: 'points',
      points: shotIn(found).map(({ measurement, residual }) => ({
        x: fromSi(measurement.range, far),
        y: fromSi(residual, smallLength),
        error: fromSi(measurement.sd, smallLength),
      })),
    },
  ],
  markers: [{ axis: 'y', at: 0, label: 'the model' }],
});

/** The same for paper: with room beside the outermost groups, and how sure the model itself is between them. */
export function residualPlotWithBand(found: FitFindings, units: DisplayUnits): Plot {
  const plot = residualPlot(found, units);
  const band = bandBetweenMarks(found, units);
  return {
    ...plot,
    x: { ...plot.x, reaches: besides(found, units), tight: true },
    series: [
      ...plot.series,
      ...(band.length < 2
        ? []
        : [
            {
              name: 'the mark of every range, ± one standard error',
              kind: 'band' as const,
              points: band,
            },
          ]),
    ],
  };
}

/** Beyond the outermost ranges shot the model's error grows until nothing else could be seen; the other picture has it. */
function bandBetweenMarks(found: FitFindings, units: DisplayUnits): readonly PlotPoint[] {
  const { sureness } = found;
  const shot = shotIn(found).map(({ measurement }): number => measurement.range);
  const [from, to] = [Math.min(...shot) - ROUNDING, Math.max(...shot) + ROUNDING];
  return sureness.flatMap(({ range, now }) =>
    range >= from && range <= to && now !== null
      ? [{ x: fromSi(range, units.range), y: 0, error: fromSi(now, units.smallLength) }]
      : [],
  );
}
const ROUNDING = 1e-6; // m

/** A little beyond the outermost ranges shot: a sign on the axis itself is hard to read. */
function besides(found: FitFindings, units: DisplayUnits): readonly number[] {
  const shot = shotIn(found).map(({ measurement }) => fromSi(measurement.range, units.range));
  return [Math.max(0, Math.min(...shot) - BESIDE), Math.max(...shot) + BESIDE];
}
const BESIDE = 2; // in the unit of ranges

/**
 * How sure the mark of every range is, now and after the next group, and which ranges were shot; null when neither is worth
 * a picture.
 */
export function surenessPlot(found: FitFindings, units: DisplayUnits): Plot | null {
  const { sureness, next } = found;
  const marks = shotIn(found);
  const { range: far, smallLength } = units;
  const after = `after ${NEXT_ARROWS} arrows at ${formatQuantity(next.range, far, 0)}`;
  const lines = [
    ...surenessLine(
      'now',
      sureness.map(({ range, now }) => ({ range, sd: now })),
      units,
    ),
    ...surenessLine(
      after,
      sureness.map((row) => ({ range: row.range, sd: row.after })),
      units,
    ),
  ];
  if (lines.length === 0) return null;
  return {
    x: {
      label: 'range',
      unit: symbolOf(far),
      ...(marks.length === 0 ? {} : { reaches: besides(found, units), tight: true }),
    },
    y: { label: 'standard error of the mark, on the target', unit: symbolOf(smallLength) },
    series: [
      ...lines,
      ...(marks.length === 0
        ? []
        : [
            {
              name: 'ranges that were shot',
              kind: 'points' as const,
              points: marks.map(({ measurement }) => ({ x: fromSi(measurement.range, far), y: 0 })),
            },
          ]),
    ],
  };
}

/** The line of one uncertainty by range; none when it is too wide at any. */
function surenessLine(
  name: string,
  rows: readonly { readonly range: Metres; readonly sd: Metres | null }[],
  units: DisplayUnits,
): readonly PlotSeries[] {
  const points = rows.flatMap(({ range, sd }) =>
    sd === null ? [] : [{ x: fromSi(range, units.range), y: fromSi(sd, units.smallLength) }],
  );
  return points.length < rows.length ? [] : [{ name, kind: 'line', points }];
}
