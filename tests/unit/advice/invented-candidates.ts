import type { BowAndArrows, Candidate } from '../../../src/advice/builds/candidate.ts';
import { buildArrow } from '../../../src/arrow/build.ts';
import type { ArrowParts } from '../../../src/arrow/parts/parts.ts';
import { COMPOUND_VIRTUAL_MASS } from '../../../src/bow/energy.ts';
import { calibrate } from '../../../src/calibration/fit.ts';
import type { Measurement } from '../../../src/calibration/measurement.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { GRAIN, INCH, ridgeCampParts, ridgeCampVanes } from '../arrow/ridge-camp-arrow.ts';
import { NO_DAYS, priors } from '../calibration/invented-problem.ts';
import { inventedRig } from '../sight/invented-rig.ts';

export const grains = (count: number) => si<'kg'>(count * GRAIN);

export const baseArrow = buildArrow({ parts: ridgeCampParts });
export const rigOf = (arrow: typeof baseArrow): Rig => ({
  ...inventedRig,
  conditions: { ...inventedRig.conditions, arrow: arrow.flying },
});

export const withPoint = (mass: number): ArrowParts => ({
  ...ridgeCampParts,
  point: { ...ridgeCampParts.point, mass: grains(mass) },
});
export const tallVanes: ArrowParts = {
  ...ridgeCampParts,
  vanes: { ...ridgeCampVanes, height: si(0.65 * INCH) },
};

export function candidate(name: string, parts: ArrowParts, more: Partial<Candidate> = {}): Candidate {
  const arrow = buildArrow({ parts });
  return { name, arrow, rig: rigOf(arrow), speed: null, ownDragSd: null, massSd: si(0), ...more };
}

export const bowWith = (
  candidates: readonly Candidate[],
  measurements: readonly Measurement[] = [],
  more: Partial<BowAndArrows> = {},
): BowAndArrows => ({
  name: 'now',
  arrow: baseArrow,
  calibration: calibrate({ rig: rigOf(baseArrow), priors, measurements, days: NO_DAYS }),
  candidates,
  otherShots: [],
  virtualMass: COMPOUND_VIRTUAL_MASS,
  identity: 'bow',
  rated: false,
  powerStroke: si(20.75 * INCH),
  peakDraw: si(68 * 4.4482216152605),
  ...more,
});
