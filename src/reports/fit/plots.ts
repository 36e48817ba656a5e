import type { Plot, PlotPoint } from '../../documents/plot/plot-data.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import { isToldSpread } from '../told-spread.ts';
import { type FitFindings, NEXT_ARROWS } from './findings.ts';

/** How far each group lies from the model, with its error bar. */
export function residualPlot({ session, marks }: FitFindings): Plot {
  const { range, smallLength } = session.units;
  return {
    x: { label: 'range', unit: symbolOf(range) },
    y: { label: 'observed less predicted', unit: symbolOf(smallLength) },
    series: [
      {
        name: 'shot marks, ± one standard uncertainty',
        kind: 'points',
        points: marks.map(({ residual: { measurement, residual } }) => ({
          x: fromSi(measurement.range, range),
          y: fromSi(residual, smallLength),
          error: fromSi(measurement.sd, smallLength),
        })),
      },
    ],
    markers: [{ axis: 'y', at: 0, label: 'the model' }],
  };
}

/** The same for paper: with room beside the outermost groups, and how sure the model itself is between them. */
export function residualPlotWithBand(found: FitFindings): Plot {
  const plot = residualPlot(found);
  const band = bandBetweenMarks(found);
  return {
    ...plot,
    x: { ...plot.x, reaches: besides(found), tight: true },
    series: [
      ...plot.series,
      ...(band.length < 2
        ? []
        : [
            {
              name: 'the mark of every range, ± one standard uncertainty',
              kind: 'band' as const,
              points: band,
            },
          ]),
    ],
  };
}

/** Beyond the outermost ranges shot the model's error grows until nothing else could be seen; the other picture has it. */
function bandBetweenMarks({ session: { units }, marks, ranges, next }: FitFindings): readonly PlotPoint[] {
  const shot = marks.map(({ residual }) => residual.measurement.range as number);
  const [from, to] = [Math.min(...shot) - ROUNDING, Math.max(...shot) + ROUNDING];
  return ranges.flatMap((range, i) => {
    const sd = next.now[i] ?? Number.NaN;
    return range >= from && range <= to && isToldSpread(sd)
      ? [{ x: fromSi(range, units.range), y: 0, error: fromSi(sd, units.smallLength) }]
      : [];
  });
}
const ROUNDING = 1e-6; // m

/** A little beyond the outermost ranges shot: a sign on the axis itself is hard to read. */
function besides({ session: { units }, marks }: FitFindings): readonly number[] {
  const shot = marks.map(({ residual }) => fromSi(residual.measurement.range, units.range));
  return [Math.max(0, Math.min(...shot) - BESIDE), Math.max(...shot) + BESIDE];
}
const BESIDE = 2;

/** How sure the mark of every range is, now and after the next group, and which ranges were shot; null when neither is worth a picture. */
export function surenessPlot(found: FitFindings): Plot | null {
  const { session, marks, ranges, next } = found;
  const { range, smallLength } = session.units;
  const line = (name: string, sds: readonly number[]) =>
    sds.every(isToldSpread)
      ? [
          {
            name,
            kind: 'line' as const,
            points: ranges.map((at, i) => ({
              x: fromSi(at, range),
              y: fromSi(sds[i] ?? Number.NaN, smallLength),
            })),
          },
        ]
      : [];
  const lines = [
    ...line('now', next.now),
    ...line(`after ${NEXT_ARROWS} arrows at ${formatQuantity(next.range, range, 0)}`, next.after),
  ];
  if (lines.length === 0) return null;
  return {
    x: {
      label: 'range',
      unit: symbolOf(range),
      ...(marks.length === 0 ? {} : { reaches: besides(found), tight: true }),
    },
    y: { label: 'standard uncertainty of the mark, on the target', unit: symbolOf(smallLength) },
    series: [
      ...lines,
      ...(marks.length === 0
        ? []
        : [
            {
              name: 'ranges that were shot',
              kind: 'points' as const,
              points: marks.map(({ residual }) => ({ x: fromSi(residual.measurement.range, range), y: 0 })),
            },
          ]),
    ],
  };
}
