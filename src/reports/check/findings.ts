import { LEAST_MARGIN } from '../../advice/launch/swing.ts';
import type { DragTerm } from '../../arrow/drag/drag-term.ts';
import { staticMarginSd } from '../../arrow/lift/static-margin.ts';
import { type Swing, swing } from '../../arrow/lift/swing.ts';
import { reynoldsNumber } from '../../atmosphere/reynolds-number.ts';
import { densityAltitude } from '../../atmosphere/standard.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { type Assumed, assumedIn } from '../../setup/assemble/assumed.ts';
import { unusedUncertainties } from '../../setup/assemble/unused-uncertainties.ts';
import type { OpenSetup } from '../../setup/open.ts';

/** What follows from a setup before any question is asked of it. */
export interface CheckFindings {
  /** At release, on the shaft's cross-section, after calibration. */
  readonly dragCoefficient: number;
  /** Of the drag at release as built up from the parts; none when the file names no parts. */
  readonly dragTerms: readonly DragTerm[];
  readonly dragSum: number;
  /** Distance in which the spin grows to 63 % of its settled value; null for an arrow whose attitude is unknown. */
  readonly spinUp: Metres | null;
  /** Null when the attitude is unknown, or the arrow does not swing through. */
  readonly swing: Swing | null;
  /** Standard uncertainty of the static margin; null when there is none. */
  readonly marginSd: Metres | null;
  /** The arrow is stable, but by too little to trust: see `LEAST_MARGIN`. */
  readonly marginTooSmall: boolean;
  readonly densityAltitude: Metres;
  /** Defaults in force because the file does not say. */
  readonly assumed: readonly Assumed[];
  /** Key paths of uncertainties that nothing is computed from. */
  readonly unused: readonly string[];
}

export function checkFindings({ setup, assembly, calibration }: OpenSetup): CheckFindings {
  const { flying, dragTerms: termsAt, boundaryLayer, staticMargin, length } = assembly.arrow;
  const { conditions, launchSpeed } = calibration.rig;
  const { air, arrow } = conditions;
  const reynolds = reynoldsNumber(air, launchSpeed, arrow.diameter);
  const uncalibratedDrag = flying.drag.at(reynolds);
  const dragTerms = termsAt === null ? [] : termsAt(boundaryLayer, reynolds);
  return {
    dragCoefficient: uncalibratedDrag * arrow.dragScale,
    dragTerms,
    dragSum: dragTerms.reduce((sum, { coefficient }) => sum + coefficient, 0),
    spinUp: flying.attitude === null ? null : si(flying.attitude.spinUp / air.density),
    swing: swing(flying, air.density, uncalibratedDrag * arrow.dragScale),
    marginSd: staticMarginSd(flying),
    marginTooSmall:
      staticMargin !== null && length !== null && staticMargin > 0 && staticMargin < LEAST_MARGIN * length,
    densityAltitude: densityAltitude(air.density),
    assumed: assumedIn(setup),
    unused: unusedUncertainties(setup),
  };
}
