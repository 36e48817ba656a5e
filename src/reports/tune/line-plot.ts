import type { LineSpread } from '../../advice/tuning/line-spread.ts';
import type { Plot } from '../../documents/plot/plot-data.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';

const POINTS = 41;

/** The scatter at each place of the rest, with the parabola of the variance through it. */
export function spreadPlot(found: LineSpread, { smallLength }: DisplayUnits): Plot {
  const { groups, bestPosition, doubling } = found;
  const positions = groups.map(({ position }) => position);
  const [low, high] = [Math.min(...positions), Math.max(...positions)];
  const shown = (sd: number): number => fromSi(sd, smallLength);
  const relative = (place: number): number =>
    bestPosition === null || doubling === null ? 1 : 1 + ((place - bestPosition) / doubling) ** 2;
  const freedom = groups.reduce((sum, group) => sum + group.freedom, 0);
  const least = Math.sqrt(
    groups.reduce((sum, group) => sum + (group.freedom * group.sd ** 2) / relative(group.position), 0) /
      freedom,
  );
  const curve = Array.from({ length: POINTS }, (_, i) => {
    const place = low + ((high - low) * i) / (POINTS - 1);
    return { x: fromSi(place, 'mm'), y: shown(least * Math.sqrt(relative(place))) };
  });
  return {
    x: { label: 'rest', unit: 'mm' },
    y: { label: 'scatter square to the line', unit: symbolOf(smallLength), reaches: [0] },
    series: [
      {
        name: 'groups, ± 1 sd',
        kind: 'points',
        points: groups.map(({ position, sd, freedom: own }) => ({
          x: fromSi(position, 'mm'),
          y: shown(sd),
          // A standard deviation of so many degrees of freedom is known to this share of itself.
          error: shown(sd / Math.sqrt(2 * own)),
        })),
      },
      ...(groups.length < 3 ? [] : [{ name: 'parabola', kind: 'line' as const, points: curve }]),
    ],
    markers:
      found.verdict === 'best' && bestPosition !== null
        ? [{ axis: 'x', at: Number(fromSi(bestPosition, 'mm').toFixed(2)), label: 'best' }]
        : [],
  };
}
