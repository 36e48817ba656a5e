import type { CrosswindEstimate } from '../../calibration/sideways/crosswind.ts';
import { TOLD_CHANCE } from '../../calibration/widening.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { howMany } from '../asked/how-many.ts';
import { bowLengthWords } from '../bow-length.ts';
import type { Session } from '../session.ts';
import { sideWords, targetDigits, turnWord } from '../side-words.ts';
import { whoseArrow } from '../whose-arrows.ts';
import type { CantFindings, Turned } from './findings.ts';

/** The verdict on the lean: one plain sentence, and what would change it. */
export function verdictWords(session: Session, found: CantFindings): string {
  const { units } = session;
  const { lean, verdict } = found;
  if (!found.isCurved && !verdict.measured)
    return (
      'Not worth doing: nothing in the file makes this arrow curve. It has no vanes that spin the arrow, ' +
      'and no group with its left and right.'
    );
  const small = (length: number): string => formatQuantity(length, units.smallLength, targetDigits(units));
  const shift = `${sideWords(verdict.shift, units)} at ${formatQuantity(verdict.at, units.range, 0)}`;
  const scatters = `where ${whoseArrow(session)} scatters ${small(verdict.arrowSd)} (one standard deviation).`;
  switch (verdict.reason) {
    case 'inside the groups':
      return (
        `Not worth doing: ${verdict.measured ? 'overall' : 'as far as is known'} the arrow curves ${shift}, ` +
        `${scatters}${showWords(session, found)}`
      );
    case 'not shown':
      return verdict.couldBeWind
        ? `Not worth doing: the groups curve (${shift}, ± ${small(found.shiftSd)}), but not beyond their noise ` +
            `and what a wind may have done. ${windAlikeWords(session, found)}`
        : `Not worth doing: the groups show no curve beyond their noise (${shift}, ± ` +
            `${small(found.shiftSd)}).${showWords(session, found)}`;
    case 'worth doing':
      return (
        `Worth doing: turn the sight bar ${degrees(lean.turn)} ${turnWord(lean.turn)} as you see it ` +
        `(${verdict.significance.toFixed(1)} standard errors); that takes out a curve of ${shift}, ` +
        `${scatters}${verdict.measured ? ` ${windAlikeWords(session, found)}` : ''}`
      );
  }
}

/** What wind would have curved the groups as the lean is thought to, and what would tell one from the other. */
function windAlikeWords({ units }: Session, { lean, verdict }: CantFindings): string {
  const wind = formatQuantity(Math.abs(lean.windAlike), units.windSpeed, 1);
  const side = lean.windAlike < 0 ? 'right' : 'left';
  if (!verdict.couldBeWind)
    return `It would take a steady crosswind of ${wind} from the ${side} to curve the groups this much.`;
  return [
    `A steady crosswind of ${wind} from the ${side} that nobody wrote down would curve them as much.`,
    'These would tell the two apart: groups in still air (and "wind: { speed: 0 mph }" in the file),',
    'groups in winds from both sides, groups of another day (each with its "date"),',
    'or a plumb line held to the sight\'s travel (and "lean_sd" under "sight").',
  ].join(' ');
}

function showWords(
  { units, calibration }: Session,
  { verdict: { toShow }, isShowable }: CantFindings,
): string {
  if (toShow === null) return '';
  const far = formatQuantity(toShow.range, units.range, 0);
  const near = formatQuantity(calibration.rig.zeroRange, units.range, 0);
  const count = `${howMany(toShow.arrows)} arrows at ${far} and as many at ${near}`;
  return isShowable
    ? ` About ${count} would show a curve of this size.`
    : ` It would take ${count} to show it.`;
}

/** Angles below this are shown with a digit more, rad. */
const SMALL_ANGLE = 5e-4;

const degrees = (angle: number): string =>
  formatQuantity(Math.abs(angle), 'deg', Math.abs(angle) < SMALL_ANGLE ? 3 : 2);

/** What to turn, which way and how far, whether or not it is worth it. */
export function leanWords({ units, calibration }: Session, found: CantFindings): string {
  const { lean, isCurved, sightTurn, levelTurn, verdict } = found;
  if (!isCurved) return closedFormWords(found);
  const [top, foot] = lean.turn < 0 ? ['left', 'right'] : ['right', 'left'];
  const higher = lean.bowLean < 0 ? 'left' : 'right';
  const small = (length: number): string =>
    formatQuantity(Math.abs(length), units.smallLength, targetDigits(units) + 1);
  return [
    `The lean that cancels the curve: ${degrees(lean.turn)} ± ${degrees(lean.sd)} ${turnWord(lean.turn)} ` +
      'as the archer sees it, by either of',
    `- the sight bar (second axis): its top to the ${top}, its foot to the ${foot}, ${turnedWords(sightTurn, units)} of travel;`,
    `- the bow, ${degrees(lean.bowLean)} ${turnWord(lean.bowLean)}: the level's ${higher} end up, ` +
      `${turnedWords(levelTurn, units)} of level.`,
    `Then set the windage again. This leaves ${small(lean.residualMax)} of ${small(verdict.shift)} at the worst range.`,
    closedFormWords(found),
    ...(calibration.rig.conditions.place === null
      ? []
      : ['The rotation of the Earth at this latitude is included.']),
  ].join('\n');
}

function turnedWords({ offset, length }: Turned, { smallLength, bowLength }: DisplayUnits): string {
  const fine = smallLength === 'in' ? formatQuantity(offset, 'thou', 1) : formatQuantity(offset, 'mm', 3);
  return `${fine} over ${bowLengthWords(length, { bowLength }, 1)}`;
}

function closedFormWords({ lean: { closedForm } }: CantFindings): string {
  if (closedForm === null) return 'The file lists no parts that spin the arrow, so its spin is not known.';
  const { gyroscopic, shaftForceCeiling } = closedForm;
  return (
    `By the closed formula the spin alone asks for ${degrees(gyroscopic)} ${turnWord(gyroscopic)}, and ` +
    `at most ${degrees(shaftForceCeiling)} more if the side force of the spin were at its ceiling; that ` +
    'force has not been measured on arrows.'
  );
}

/** What the groups can and cannot tell. */
export function groupWords(session: Session, found: CantFindings): string {
  const { fit, leanSpinLikeness, leanOrSpin, isWindTakenOff } = found;
  if (fit.residuals.length === 0)
    return (
      'No group in the file says how far left or right it was (lateral), so an error of the level, which ' +
      'looks just like drift by spin, cannot be ruled out.'
    );
  return [
    ...(isWindTakenOff
      ? [
          'The groups are assumed to have been shot in the wind of the file, and the drift it causes is subtracted.',
        ]
      : []),
    ...(leanSpinLikeness !== null && leanOrSpin
      ? [
          'A leaning bow and a spinning arrow look the same in these groups (correlation ' +
            `${Math.abs(leanSpinLikeness).toFixed(3)}): only their sum is known, and one lean cancels both. ` +
            'Groups shot with the other helical as well (turn: left or right), or with the bow upside down ' +
            '(cant: 180 deg), would tell them apart.',
        ]
      : []),
    ...fit.crosswinds.map((crosswind) => crosswindWords(session, crosswind)),
    launchWords(found),
    ...(fit.chance < TOLD_CHANCE
      ? [
          `The groups vary sideways more than their sizes explain (chance ${(100 * fit.chance).toFixed(1)} %), ` +
            `so the errors are widened ${fit.widening.toFixed(1)} times to match.`,
        ]
      : []),
  ].join('\n');
}

/** What the groups say of a day's wind. */
function crosswindWords({ units }: Session, { day, value, sd, priorSd }: CrosswindEstimate): string {
  const speed = (wind: number): string => formatQuantity(Math.abs(wind), units.windSpeed, 1);
  const when = day === null ? 'when the farthest group was shot' : `on ${day}`;
  const side = value < 0 ? 'right' : 'left';
  return [
    `Beyond what the file says, the groups show a crosswind of ${speed(value)} from the ${side} (± ${speed(sd)})`,
    `${when}; ± ${speed(priorSd)} was assumed before.`,
  ].join(' ');
}

function launchWords({ fit: { launch } }: CantFindings): string {
  switch (launch.kind) {
    case 'not asked for':
      return (
        'Nothing in the groups points to a bad launch: its effect is a straight line beyond about 40 yd, and ' +
        'hides in the windage.'
      );
    case 'not to be seen':
      return (
        'These groups could not show a bad launch: its effect is a straight line beyond about 40 yd, and ' +
        'hides in the windage.'
      );
    case 'does not help':
      return 'A bad launch does not explain what is left over.';
    case 'seen':
      return (
        `The groups show a bad launch (chance without one ${(100 * launch.chance).toFixed(2)} %): the arrow ` +
        'swings over its first 20 to 40 yd. Check nock fit, rest and a paper tear before you lean anything.'
      );
  }
}
