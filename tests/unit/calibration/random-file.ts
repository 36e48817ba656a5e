import { at } from '../../../src/numerics/at.ts';
import { randomStream } from '../../../src/numerics/random.ts';
import { FOOT, GRAIN, INCH } from '../../../src/quantities/exact.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { openSetup } from '../../../src/setup/open.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { yards } from '../sight/invented-rig.ts';

/**
 * An ordinary file: a bow and an arrow of any common kind, measured with the usual errors, and one to eight marks shot with them,
 * without a slip of the pen.
 */
export function randomFile(seed: number, index: number): string {
  const { uniform, normal } = randomStream(seed, index);
  const between = (lo: number, hi: number): number => lo + (hi - lo) * uniform();
  const speed = between(190, 330); // fps
  const mass = between(330, 620); // gr
  const diameter = between(0.166, 0.3); // in
  const drag = between(1.4, 3.6);
  const peep = between(3.6, 5.4); // in
  const unit = between(0.3, 2); // mm
  const told = (marks: string, scale: string): string => `bow: { peep_height: ${peep.toFixed(2)} in }
arrow: { diameter: ${diameter.toFixed(3)} in, mass: ${mass.toFixed(0)} gr, drag_coefficient: ${drag.toFixed(2)} }
launch: { speed: ${speed.toFixed(0)} fps }
sight:
  peep_to_pin: 33 in
  zero_range: 20 yd
  scale: ${scale}
${marks}`;
  const scale = `{ travel_per_unit: ${unit.toFixed(2)} mm, at_zero: 12.4 }`;
  const bow = realBow(openSetup(told('', scale), 'told.yaml').assembly.rig, normal);
  const spread = between(0.012, 0.09); // in per yd
  const farthest = speed < 240 ? 60 : 90; // yd
  const count = 1 + Math.floor(between(0, 8));
  const tens = Array.from({ length: count }, () => 10 * Math.round(between(1, farthest / 10)));
  const marks = [...new Set(tens)].map((range) => {
    const arrows = 2 + Math.floor(between(0, 9));
    const mark = at(marksFor(bow, [yards(range)]).marks, 0);
    const off = (spread * range * INCH * normal()) / Math.sqrt(arrows) / Math.abs(mark.heightPerTravel);
    const reading = 12.4 + (mark.travel + off) / (unit * 1e-3);
    return `  - { range: ${range} yd, reading: ${reading.toFixed(1)}, arrows: ${arrows} }`;
  });
  const placed = uniform() < 0.7 ? scale : `{ travel_per_unit: ${unit.toFixed(2)} mm }`;
  return told(`marks:\n${marks.join('\n')}\n`, placed);
}

/** The bow as it is, off from what was measured by the usual errors. */
function realBow(rig: Rig, normal: () => number): Rig {
  const { conditions, geometry } = rig;
  return {
    ...rig,
    launchSpeed: si(rig.launchSpeed + 1.5 * FOOT * normal()),
    geometry: {
      ...geometry,
      peepHeight: si(geometry.peepHeight + 0.1 * INCH * normal()),
      peepToPin: si(geometry.peepToPin + 0.25 * INCH * normal()),
    },
    conditions: {
      ...conditions,
      arrow: {
        ...conditions.arrow,
        mass: si(conditions.arrow.mass + GRAIN * normal()),
        dragScale: Math.max(0.5, 1 + 0.15 * normal()),
      },
    },
  };
}
