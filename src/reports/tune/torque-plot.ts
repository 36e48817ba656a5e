import type { TorqueNull } from '../../advice/tuning/torque-null.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';

const POINTS = 21;
/** How far the line is drawn beyond the extensions shot, m. */
const BEYOND = 0.0127;

/** What every extension showed, at the range of the last, with the line through them and its null. */
export function torquePlot(found: TorqueNull, gripToPeep: number, { smallLength }: DisplayUnits): Plot {
  const { settings, now, torque } = found;
  const place = found.null;
  const shown = (length: number): number => fromSi(length, smallLength);
  const extensions = settings.map(({ extension }) => extension);
  const ends = [...extensions, ...(place === null ? [] : [place.extension])];
  const [from, to] = [Math.min(...ends) - BEYOND, Math.max(...ends) + BEYOND];
  const line =
    place === null || torque === null
      ? []
      : Array.from({ length: POINTS }, (_, i) => {
          const extension = from + ((to - from) * i) / (POINTS - 1);
          const u = 1 / (gripToPeep + extension) - 1 / (gripToPeep + place.extension);
          return { x: shown(extension), y: shown(torque * gripToPeep * u * now.range) };
        });
  return {
    x: { label: 'pin ahead of the grip', unit: symbolOf(smallLength) },
    y: { label: 'shift from left to right', unit: symbolOf(smallLength) },
    series: [
      {
        name: 'shots, ± 1 sd',
        kind: 'points',
        points: settings.map(({ extension, shift, shiftSd, range }) => ({
          x: shown(extension),
          y: shown((shift * now.range) / range),
          error: shown((shiftSd * now.range) / range),
        })),
      },
      ...(line.length === 0 ? [] : [{ name: 'line', kind: 'line' as const, points: line }]),
    ],
    markers: [
      { axis: 'y', at: 0, label: 'no torque' },
      ...(place === null
        ? []
        : [{ axis: 'x' as const, at: Number(shown(place.extension).toFixed(2)), label: 'null' }]),
    ],
  };
}
