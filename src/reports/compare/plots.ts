import type { RowValue } from '../../advice/builds/build-readings.ts';
import type { BuildCurve, Comparison } from '../../advice/builds/comparison.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import { rowWording } from './fields.ts';

/** One number of every build against range, a curve each; the base is called "now". */
function overlaid(curves: readonly BuildCurve[], key: RowValue, title: string, units: DisplayUnits): Plot {
  const { label, unit, shown } = rowWording(key, units);
  return {
    title,
    x: { label: 'range', unit: symbolOf(units.range) },
    y: { label, unit },
    series: curves.map(({ name, ranges, rows }, i) => ({
      name: i === 0 ? 'now' : name,
      kind: 'line',
      points: rows.flatMap((row, k) => {
        const [value, range] = [row[key], ranges[k]];
        return value === null || range === undefined
          ? []
          : [{ x: fromSi(range, units.range), y: shown(value) }];
      }),
    })),
  };
}

/** Paths sighted in at the zero range, speed, energy and drift by wind of all builds. */
export function comparisonPlots(
  curves: readonly BuildCurve[],
  zeroRange: number,
  units: DisplayUnits,
): readonly Plot[] {
  const path = overlaid(
    curves,
    'height',
    `Path, sighted in at ${formatQuantity(zeroRange, units.range, 0)}`,
    units,
  );
  return [
    { ...path, y: { ...path.y, label: 'height above the line of sight' } },
    overlaid(curves, 'speed', 'Speed', units),
    overlaid(curves, 'energy', 'Energy', units),
    overlaid(curves, 'windDrift', 'Drift by wind', units),
  ];
}

/** Where each other build hits with the base's marks, and how sure that is. */
export function markPlot({ others, questions }: Comparison, units: DisplayUnits): Plot {
  const { unit, shown } = rowWording('drop', units);
  return {
    x: { label: 'range', unit: symbolOf(units.range) },
    y: { label: 'hit with the present marks, ± one standard error', unit },
    series: others.map(({ readings, rows }) => ({
      name: readings.build.name,
      kind: 'points',
      points: rows.map(({ withBaseMark: { value, sd } }, i) => ({
        x: fromSi(at(questions.ranges, i), units.range),
        y: shown(value),
        error: shown(sd),
      })),
    })),
    markers: [{ axis: 'y', at: 0, label: 'the present build' }],
  };
}
