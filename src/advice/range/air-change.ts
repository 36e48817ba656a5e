import type { Air } from '../../atmosphere/air.ts';
import { moistAir } from '../../atmosphere/moist-air.ts';
import { densityAltitude, standardAir } from '../../atmosphere/standard.ts';
import { NOTICED_SHARE } from '../../calibration/own-spread.ts';
import { flyer } from '../../flight/trajectory.ts';
import { type Kelvin, type Metres, si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import { sightIn } from '../../sight/sighted.ts';
import { impact } from '../../sight/zero.ts';

/** Air that an archer may meet, named by what is different about it. */
export type OtherAir =
  | { readonly kind: 'altitude'; readonly altitude: Metres; readonly air: Air }
  | { readonly kind: 'temperature'; readonly air: Air };

/** What the tape is off by in other air at one range. */
interface TapeError {
  readonly range: Metres;
  /** Height of the hit with the mark of the rig's own air: high positive. */
  readonly vertical: Metres;
  /** Change of the pin that would mend it, m; positive down. */
  readonly travelChange: Metres;
}

export interface AirChange {
  readonly other: OtherAir;
  readonly densityAltitude: Metres;
  readonly rows: readonly TapeError[];
  /** Where the error is largest against what one arrow scatters there. */
  readonly worst: TapeError;
  /** Whether every error stays below a third of one arrow's standard deviation. */
  readonly holds: boolean;
}

/**
 * Whether marks made in the rig's air hold in others, at `ranges` (m): the same pins flown again through the other air. The
 * bow is taken to shoot as fast there; cold limbs and strings may not.
 *
 * @param arrowSdPerRange standard deviation of one arrow per metre of range, in one direction
 */
export function airChanges(
  rig: Rig,
  others: readonly OtherAir[],
  ranges: readonly number[],
  arrowSdPerRange: number,
): readonly AirChange[] {
  const { pins } = sightIn(rig, ranges);
  return others.map((other) => {
    const there: Rig = { ...rig, conditions: { ...rig.conditions, air: other.air } };
    const flight = flyer(there.conditions);
    const moved = sightIn(there, ranges).pins;
    const rows = ranges.map((range, i): TapeError => {
      const [pin, pinThere] = [pins[i], moved[i]];
      if (pin === undefined || pinThere === undefined) throw new RangeError(`no pin for range ${i}`);
      return {
        range: si(range),
        vertical: si(impact(flight, there, pin, range).height),
        travelChange: si(pinThere.down - pin.down),
      };
    });
    const share = ({ range, vertical }: TapeError): number => Math.abs(vertical) / (arrowSdPerRange * range);
    const worst = rows.reduce((a, b) => (share(b) > share(a) ? b : a));
    return {
      other,
      densityAltitude: densityAltitude(other.air.density),
      rows,
      worst,
      holds: share(worst) < NOTICED_SHARE,
    };
  });
}

/** Camps and weather to ask about. */
export interface Elsewhere {
  /** In the standard atmosphere, m. */
  readonly altitudes: readonly Metres[];
  readonly temperatures: readonly Kelvin[];
}

/** Other air: the standard atmosphere at several altitudes, and cold and heat at the pressure and humidity of the rig's own. */
export const otherAirs = (
  { pressure, humidity }: Air,
  { altitudes, temperatures }: Elsewhere,
): readonly OtherAir[] => [
  ...altitudes.map((altitude): OtherAir => ({ kind: 'altitude', altitude, air: standardAir(altitude) })),
  ...temperatures.map(
    (temperature): OtherAir => ({
      kind: 'temperature',
      air: moistAir({ temperature, pressure, humidity }),
    }),
  ),
];
