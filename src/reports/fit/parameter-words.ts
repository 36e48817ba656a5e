import type { ParameterName } from '../../calibration/parameters.ts';
import type { DisplayUnit } from '../../quantities/format.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import { bowDigits } from '../bow-length.ts';
import type { Session } from '../session.ts';

/** A calibrated parameter as an archer reads it: its name, and a number of it in its unit. */
export interface ParameterWords {
  readonly name: string;
  readonly unit: string;
  readonly digits: number;
  /** Of a value, and of a difference of values. */
  readonly value: (raw: number) => number;
  readonly spread: (raw: number) => number;
}

const inUnit = (name: string, unit: DisplayUnit, digits: number): ParameterWords => ({
  name,
  unit: symbolOf(unit),
  digits,
  value: (raw) => fromSi(raw, unit),
  spread: (raw) => fromSi(raw, unit),
});

/** How each parameter of a fit is shown. */
export function parameterWords({
  units,
  assembly,
}: Session): Readonly<Record<ParameterName, ParameterWords>> {
  const scale = assembly.rig.scale;
  const pitch = scale === null ? null : fromSi(scale.travelPerUnit, 'mm');
  return {
    launch_speed: inUnit('launch speed', units.speed, 1),
    drag_scale: {
      name: assembly.arrow.dragFrom === 'given' ? 'drag, times the given' : 'drag, times the build-up',
      unit: '',
      digits: 3,
      value: (raw) => raw,
      spread: (raw) => raw,
    },
    peep_height: inUnit('peep height', units.bowLength, bowDigits(units, 2)),
    scale_ratio:
      pitch === null
        ? {
            name: 'peep to pin, times the measured',
            unit: '',
            digits: 4,
            value: (raw) => raw,
            spread: (raw) => raw,
          }
        : {
            name: 'travel per unit of the scale',
            unit: 'mm',
            digits: 4,
            value: (raw) => raw * pitch,
            spread: (raw) => raw * pitch,
          },
    speed_per_degree: inUnit('speed by warmth', units.speedPerDegree, 3),
    tape_ratio: {
      name: 'strip travel over pin travel',
      unit: '',
      digits: 4,
      value: (raw) => raw,
      spread: (raw) => raw,
    },
    scale_offset:
      scale === null
        ? inUnit("place of the zero range's line", 'mm', 1)
        : {
            name: 'reading at the zero range',
            unit: 'scale',
            digits: 2,
            value: (raw) => raw + scale.atZero,
            spread: (raw) => raw,
          },
  };
}
