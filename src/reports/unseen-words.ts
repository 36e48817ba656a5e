import type { Calibration } from '../calibration/fit.ts';
import { isUnitOpen } from '../calibration/other-unit.ts';
import { type UnseenSlip, unseenSlip } from '../calibration/unseen-slip.ts';
import { INCH } from '../quantities/exact.ts';
import { formatQuantity } from '../quantities/format.ts';
import type { Metres } from '../quantities/quantity.ts';
import type { Session } from './session.ts';

/** With so few marks hardly anything is left over to check one by. */
const FEW = 3;
/** With more it is told where a slip would do more than this at the far range, and more than the marks are said to be good to. */
const TOLD = { shift: 4 * INCH, sds: 3 };

/** The largest slip in one reading that would go unseen; null where the marks check one another well enough. */
export function toldSlip({ calibration }: Pick<Session, 'calibration'>, farRange: Metres): UnseenSlip | null {
  const marks = calibration.residuals.filter(({ measurement }) => measurement.kind === 'mark').length;
  const slip = unseenSlip(atHome(calibration), farRange);
  if (slip === null) return null;
  return marks <= FEW || (slip.shift > TOLD.shift && slip.shift > TOLD.sds * slip.farSd) ? slip : null;
}

/** What was shot was shot at home, with the file's own arrow, wherever the answer is for. */
const atHome = (calibration: Calibration): Calibration =>
  calibration.elsewhere === null ? calibration : calibration.elsewhere.home;

/** The same in words, and that a unit of the scale which marks measure takes the unit of their ranges on trust. */
export function unseenWords(session: Session, farRange: Metres): readonly string[] {
  const slip = toldSlip(session, farRange);
  return [
    ...(slip === null ? [] : [slipWords(session, slip)]),
    ...(restsOnUnit(session) ? [RESTS_ON_UNIT] : []),
  ];
}

function slipWords({ units }: Session, { range, numbers, shift, farRange }: UnseenSlip): string {
  const [at, far] = [range, farRange].map((one) => formatQuantity(one, units.range, 0));
  const moved = formatQuantity(shift, units.smallLength, shift > TOLD.shift ? 0 : 1);
  return numbers === null
    ? `A slip of any size in the reading at ${at} would not show with these marks; each number of the scale there would ` +
        `move ${far} by ${moved}. One more range would check it.`
    : `A slip of up to ${numbers.toFixed(1)} numbers at ${at} would not show with these marks; it would move ${far} by ` +
        `${moved}.`;
}

/** Where a unit of the scale is unknown, ranges in the other unit would only give another one. */
const restsOnUnit = ({ calibration, disagreement }: Session): boolean =>
  calibration.rig.scale !== null &&
  calibration.problem.measurements.some(({ kind }) => kind === 'mark') &&
  disagreement === null &&
  isUnitOpen(atHome(calibration));

const RESTS_ON_UNIT =
  'The marks cannot tell yards from metres: everything here rests on the unit that their ranges were written in.';
