import type { Elsewhere } from '../../advice/range/air-change.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { toSi } from '../../quantities/format.ts';

/** From the shore to the high hills, and from a hard frost to a hot noon, in round numbers of the unit shown. */
export const elsewhere = ({ height }: DisplayUnits): Elsewhere =>
  height === 'ft'
    ? {
        altitudes: [0, 3000, 6000, 9000].map((feet) => toSi(feet, 'ft')),
        temperatures: [0, 25, 50, 75, 100].map((degrees) => toSi(degrees, 'degF')),
      }
    : {
        altitudes: [0, 1000, 2000, 3000].map((metres) => toSi(metres, 'm')),
        temperatures: [-15, 0, 15, 30].map((degrees) => toSi(degrees, 'degC')),
      };
