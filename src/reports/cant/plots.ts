import type { Plot, PlotPoint } from '../../documents/plot/plot-data.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import type { Metres } from '../../quantities/quantity.ts';
import type { CantFindings } from './findings.ts';

/** The curved part of the sideways miss: by what is known of the arrow, and by the groups. */
export function driftPlot({ drift, fit }: CantFindings, units: DisplayUnits): Plot {
  const point = (range: Metres, lateral: number): PlotPoint => ({
    x: fromSi(range, units.range),
    y: fromSi(lateral, units.smallLength),
  });
  const measured = drift.flatMap((row) => row.measured ?? []);
  return {
    x: { label: 'range', unit: symbolOf(units.range) },
    y: { label: 'curved drift, right positive', unit: symbolOf(units.smallLength) },
    series: [
      {
        name: 'gyroscopic',
        kind: 'line',
        points: drift.map(({ range, gyroscopic }) => point(range, gyroscopic)),
      },
      {
        name: 'with the side force of the spin at its ceiling',
        kind: 'line',
        points: drift.map(({ range, gyroscopic, shaftForceCeiling }) =>
          point(range, gyroscopic + shaftForceCeiling),
        ),
      },
      ...(measured.length === 0
        ? []
        : [
            {
              name: 'measured, fitted',
              kind: 'line' as const,
              points: measured.map(({ range, lateral }) => point(range, lateral)),
            },
            {
              name: 'groups without their windage, ± one standard error',
              kind: 'points' as const,
              points: fit.residuals.map(({ mark, curved, sd }) => ({
                ...point(mark.range, curved),
                error: fromSi(sd, units.smallLength),
              })),
            },
          ]),
    ],
    markers: [{ axis: 'y', at: 0, label: 'straight' }],
  };
}
