import type { RestOutcome } from '../../advice/tuning/rest-null.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import type { Direction } from './rest-answer.ts';

/** What was read at each place of the rest, with the line through it; null while there is only one place. */
export function restPlot(
  { readings }: Direction,
  outcome: RestOutcome,
  { smallLength }: DisplayUnits,
  label: string,
): Plot | null {
  const places = readings.map(({ position }) => position);
  if (new Set(places).size < 2) return null;
  const found = outcome.kind === 'null' ? outcome.null : null;
  const ends = [...places, ...(found === null ? [] : [found.position])];
  const line =
    found === null
      ? []
      : [Math.min(...ends), Math.max(...ends)].map((place) => ({
          x: fromSi(place, 'mm'),
          y: fromSi(found.slope * (place - found.position), smallLength),
        }));
  return {
    x: { label: 'rest, right', unit: 'mm' },
    y: { label, unit: symbolOf(smallLength), reaches: [0] },
    series: [
      {
        name: 'read, ± 1 sd',
        kind: 'points',
        points: readings.map(({ position, reading, sd }) => ({
          x: fromSi(position, 'mm'),
          y: fromSi(reading, smallLength),
          error: fromSi(sd, smallLength),
        })),
      },
      ...(line.length === 0 ? [] : [{ name: 'line', kind: 'line' as const, points: line }]),
    ],
    markers: [
      { axis: 'y', at: 0, label: 'clean' },
      ...(found === null
        ? []
        : [{ axis: 'x' as const, at: Number(fromSi(found.position, 'mm').toFixed(2)), label: 'null' }]),
    ],
  };
}
