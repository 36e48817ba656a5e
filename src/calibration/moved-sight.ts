import { type Metres, si } from '../quantities/quantity.ts';
import type { Rig } from '../sight/rig.ts';
import type { Calibration } from './fit.ts';

/** Where the sight and the peep are after they were moved. */
export interface MovedSight {
  readonly peepToPin: Metres;
  /** How much higher the peep is than it was. */
  readonly peepHigher: Metres;
}

/**
 * The calibration with the sight or the peep elsewhere on the bow, zeroed again with the same arrow: the zero range reads as it
 * did, a unit of the scale moves the pin as far as it did, and travel goes as the distance from the peep to the pin.
 */
export function calibrationMoved(
  calibration: Calibration,
  { peepToPin, peepHigher }: MovedSight,
): Calibration {
  const { rig, problem, values, parameters } = calibration;
  const moved = (of: Rig): Rig => ({
    ...of,
    geometry: { ...of.geometry, peepToPin, peepHeight: si(of.geometry.peepHeight + peepHigher) },
  });
  return {
    ...calibration,
    rig: moved(rig),
    problem: { ...problem, rig: moved(problem.rig) },
    values: { ...values, peep_height: values.peep_height + peepHigher },
    parameters: parameters.map((parameter) =>
      parameter.name === 'peep_height' ? { ...parameter, value: parameter.value + peepHigher } : parameter,
    ),
  };
}
