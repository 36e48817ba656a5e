import type { Prior, Priors } from '../../calibration/parameters.ts';
import type { Rig } from '../../sight/rig.ts';
import type { SetupFile } from '../schema/schema.ts';
import { heldOver, isSet, usualCentreSd } from './assemble-marks.ts';
import { pitchSd, type ScaleKnowledge } from './assemble-scale.ts';
import { defaultOf } from './defaults.ts';
import { dragSd } from './drag-sd.ts';
import { shotsIn } from './shots.ts';
import { statedSd } from './stated-sd.ts';

/**
 * Wider than any error of a sight's scale, so that the marks alone decide. The yardsticks are a pitch to 10 % and a
 * place to 2 mm.
 */
const UNKNOWN_PITCH: Prior = { value: 1, sd: 10, yardstick: 0.2 }; // of the first value
const UNKNOWN_PLACE = { sd: 0.5, yardstick: 0.004 }; // m of travel
/** Without a scale the place of its zero counts in metres of travel. */
const METRE_OF_TRAVEL = 1;
/** A mark this near to the zero range is the zero, m. */
const SAME_RANGE = 0.5;
/** What is known of every parameter before the marks. */
export function priorsOf(
  setup: SetupFile,
  rig: Rig,
  knowledge: ScaleKnowledge,
  launchSpeedSd: number,
): Priors {
  const { bow, arrow, sight } = setup;
  return {
    launch_speed: { value: rig.launchSpeed, sd: launchSpeedSd },
    drag_scale: { value: 1, sd: dragSd(arrow) },
    peep_height: { value: bow.peep_height, sd: statedSd.peepHeight(bow) ?? defaultOf('bow.peep_height_sd') },
    scale_ratio:
      knowledge.pitch === 'from marks'
        ? UNKNOWN_PITCH
        : {
            value: 1,
            sd: Math.hypot(
              (statedSd.peepToPin(sight) ?? defaultOf('sight.peep_to_pin_sd')) / sight.peep_to_pin,
              sight.scale === undefined ? 0 : pitchSd(sight.scale),
            ),
          },
    scale_offset: placePrior(setup, rig, knowledge),
  };
}

/**
 * As stated in the file. Otherwise the zero counts as a group of the usual size, unless the marks contain that group
 * themselves or the reading at the zero is unknown.
 */
function placePrior(setup: SetupFile, rig: Rig, { place }: ScaleKnowledge): Prior {
  const { sight } = setup;
  const stated = sight.scale && statedSd.readingAtZero(sight.scale);
  if (place === 'given' && stated !== undefined) return { value: 0, sd: stated };
  const travelPerUnit = rig.scale === null ? METRE_OF_TRAVEL : rig.scale.travelPerUnit;
  const shotAtZero = shotsIn(setup).marks.some(
    (entry) => isSet(entry) && Math.abs(entry.range - rig.zeroRange) < SAME_RANGE && !heldOver(entry),
  );
  if (place !== 'from marks' && !shotAtZero)
    return {
      value: 0,
      sd: (usualCentreSd(rig.zeroRange) * rig.geometry.peepToPin) / rig.zeroRange / travelPerUnit,
    };
  return {
    value: 0,
    sd: UNKNOWN_PLACE.sd / travelPerUnit,
    yardstick: UNKNOWN_PLACE.yardstick / travelPerUnit,
  };
}
