import type { Plot } from '../documents/plot-data.ts';
import { formatQuantity, fromSi, symbolOf } from '../quantities/format.ts';
import { type FitFindings, NEXT_ARROWS } from './fit-findings.ts';
import { isToldSpread } from './told-spread.ts';

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

/** The same for paper: with room beside the outermost groups, and how sure the model itself is about every range. */
export function residualPlotWithBand(found: FitFindings): Plot {
  const { session, ranges, next } = found;
  const plot = residualPlot(found);
  const side = (sign: 1 | -1) =>
    ranges.map((at, i) => ({
      x: fromSi(at, session.units.range),
      y: sign * fromSi(next.now[i] ?? Number.NaN, session.units.smallLength),
    }));
  const band = [...side(1), ...side(-1).toReversed()];
  return {
    ...plot,
    x: { ...plot.x, reaches: besides(found) },
    series: [
      ...plot.series,
      {
        name: 'the mark of every range, ± one standard uncertainty',
        kind: 'line',
        points: [...band, ...band.slice(0, 1)],
      },
    ],
  };
}

/** Half a step beyond the outermost ranges shot: a sign on the axis itself is hard to read. */
function besides({ session: { units }, marks }: FitFindings): readonly number[] {
  const shot = marks.map(({ residual }) => fromSi(residual.measurement.range, units.range));
  return [Math.max(0, Math.min(...shot) - BESIDE), Math.max(...shot) + BESIDE];
}
const BESIDE = 2;

/** How sure the mark of every range is, now and after the next group, and which ranges were shot. */
export function surenessPlot(found: FitFindings): Plot {
  const { session, marks, ranges, next } = found;
  const { range, smallLength } = session.units;
  const line = (name: string, sds: readonly number[]) => ({
    name,
    kind: 'line' as const,
    points: ranges.map((at, i) => ({
      x: fromSi(at, range),
      y: fromSi(sds[i] ?? Number.NaN, smallLength),
    })),
  });
  return {
    x: {
      label: 'range',
      unit: symbolOf(range),
      ...(marks.length === 0 ? {} : { reaches: besides(found) }),
    },
    y: { label: 'standard uncertainty of the mark, on the target', unit: symbolOf(smallLength) },
    series: [
      ...(next.now.every(isToldSpread) ? [line('now', next.now)] : []),
      line(`after ${NEXT_ARROWS} arrows at ${formatQuantity(next.range, range, 0)}`, next.after),
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
