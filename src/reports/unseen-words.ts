import type { Calibration } from '../calibration/fit.ts';
import type { MarkUncertainty } from '../calibration/mark-uncertainty.ts';
import { isUnitOpen } from '../calibration/other-unit.ts';
import { isSightMark } from '../calibration/sight-mark.ts';
import { type UnseenSlip, unseenSlip } from '../calibration/unseen-slip.ts';
import { INCH } from '../quantities/exact.ts';
import { formatQuantity } from '../quantities/format.ts';
import type { Metres } from '../quantities/quantity.ts';
import { measuredAt } from './measurement-name.ts';
import type { Session } from './session.ts';

/** With so few marks hardly anything is left over to check one by. */
const FEW = 3;
/** With more it is told where a slip would do more than this at the far range, and more than the marks are said to be good to. */
const TOLD = { shift: 4 * INCH, sds: 3 };

/** The largest slip in one reading that would go unseen; null where the marks check one another well enough. */
export function toldSlip(
  { calibration, disagreement }: Pick<Session, 'calibration' | 'disagreement'>,
  farRange: Metres,
  known: readonly MarkUncertainty[] = [],
): UnseenSlip | null {
  // While marks contradict it is a slip that shows which is to be found.
  if (disagreement?.isContradiction === true) return null;
  const marks = calibration.residuals.filter(({ measurement }) => isSightMark(measurement)).length;
  const slip = unseenSlip(atHome(calibration), farRange, known);
  if (slip === null) return null;
  return marks <= FEW || (slip.shift > TOLD.shift && slip.shift > TOLD.sds * slip.farSd) ? slip : null;
}

/** What was shot was shot at home, with the file's own arrow, wherever the answer is for. */
const atHome = (calibration: Calibration): Calibration =>
  calibration.elsewhere === null ? calibration : calibration.elsewhere.home;

/** The same in words, and that a unit of the scale which marks measure takes the unit of their ranges on trust. */
export function unseenWords(
  session: Session,
  farRange: Metres,
  known: readonly MarkUncertainty[] = [],
): readonly string[] {
  const slip = toldSlip(session, farRange, known);
  return [
    ...(slip === null ? [] : [slipWords(session, slip)]),
    ...(restsOnUnit(session) ? [RESTS_ON_UNIT] : []),
  ];
}

function slipWords(session: Session, { mark, numbers, shift, farRange }: UnseenSlip): string {
  const { units } = session;
  const [at, far] = [measuredAt(session, mark), formatQuantity(farRange, units.range, 0)];
  const moved = formatQuantity(shift, units.smallLength, shift > TOLD.shift ? 0 : 1);
  if (mark.kind === 'pencil')
    return numbers === null
      ? `A slip of any size in the pencil line of ${at} would not show with these marks; each millimetre of the strip there ` +
          `would move ${far} by ${moved}. One more range would check it.`
      : `A slip of up to ${formatQuantity(numbers, 'mm', 1)} at ${at} would not show with these marks; it would move ${far} by ` +
          `${moved}.`;
  return numbers === null
    ? `A slip of any size in the reading at ${at} would not show with these marks; each number of the scale there would ` +
        `move ${far} by ${moved}. One more range would check it.`
    : `A slip of up to ${numbers.toFixed(1)} numbers at ${at} would not show with these marks; it would move ${far} by ` +
        `${moved}.`;
}

/** Where a unit of the scale is unknown, ranges in the other unit would only give another one. */
const restsOnUnit = ({ calibration, disagreement }: Session): boolean =>
  calibration.problem.measurements.some(isSightMark) &&
  disagreement === null &&
  isUnitOpen(atHome(calibration));

const RESTS_ON_UNIT =
  'The marks cannot tell yards from metres: everything here rests on the unit that their ranges were written in.';
