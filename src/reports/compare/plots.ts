import type { RowValue } from '../../advice/builds/build-readings.ts';
import type { BuildCurve, Comparison } from '../../advice/builds/comparison.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import { rowWording } from './fields.ts';

/** One number of every build less that of the base, which is called "now", against range: a curve each, named at its end. */
function overlaid(curves: readonly BuildCurve[], key: RowValue, title: string, units: DisplayUnits): Plot {
  const { label, unit, shown } = rowWording(key, units);
  const now = at(curves, 0).rows;
  return {
    title,
    x: { label: 'range', unit: symbolOf(units.range), tight: true },
    y: { label: `${label} less now's`, unit },
    namedAtEnds: true,
    series: curves.map(({ name, ranges, rows }, i) => ({
      name: i === 0 ? 'now' : name,
      kind: 'line',
      points: rows.flatMap((row, k) => {
        const [value, from, range] = [row[key], at(now, k)[key], ranges[k]];
        return value === null || from === null || range === undefined
          ? []
          : [{ x: fromSi(range, units.range), y: shown(value) - shown(from) }];
      }),
    })),
  };
}

/** Paths sighted in at the zero range, speed, energy and drift by wind of all builds, against the base. */
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
    { ...path, y: { ...path.y, label: "height above now's path" } },
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
