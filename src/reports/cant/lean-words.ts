import { formatQuantity } from '../../quantities/format.ts';
import { defaultOf } from '../../setup/assemble/defaults.ts';
import { sideWords, targetDigits, turnWord } from '../side-words.ts';
import type { CantFindings } from './findings.ts';

type Told = Pick<CantFindings, 'session' | 'lean' | 'verdict'>;

/** The verdict on the lean: one plain sentence, and what would change it. */
export function leanWords({ session, lean, verdict }: Told): string {
  const { units } = session;
  const at = formatQuantity(verdict.at, units.range, 0);
  const shift = `${sideWords(verdict.shift, units)} at ${at}`;
  const arrow = formatQuantity(verdict.arrowSd, units.smallLength, targetDigits(units));
  if (Math.abs(verdict.shift) < NOTHING && !verdict.measured)
    return 'Not worth doing: nothing in the file makes this arrow curve. It names no vanes that turn it, and no group with its left and right.';
  switch (verdict.reason) {
    case 'inside the groups':
      return `Not worth doing: ${verdict.measured ? 'all told' : 'as far as is known'} the arrow curves ${shift}, where one of your arrows scatters ${arrow} (one standard deviation).${showWords({ session, lean, verdict })}`;
    case 'not shown':
      return `Not worth doing: the groups show no curve beyond their noise (${shift}, ± ${formatQuantity(Math.abs(verdict.shift) / verdict.significance, units.smallLength, targetDigits(units))}).${showWords({ session, lean, verdict })}`;
    case 'worth doing':
      return `Worth doing: turn the sight's travel ${degrees(lean.turn)} ${turnWord(lean.turn)} as you see it (${verdict.significance.toFixed(1)} standard errors); that takes out a curve of ${shift}, where one of your arrows scatters ${arrow} (one standard deviation).`;
  }
}

/** A shift below this is none, m. */
const NOTHING = 1e-6;

/** Nobody shoots more than this to settle a question. */
const NOBODY_SHOOTS = 1000;

function showWords({ session: { units, calibration }, verdict: { toShow } }: Told): string {
  if (toShow === null) return '';
  const far = formatQuantity(toShow.range, units.range, 0);
  const near = formatQuantity(calibration.rig.zeroRange, units.range, 0);
  const count = `${toShow.arrows} arrows at ${far} and as many at ${near}`;
  return toShow.arrows > NOBODY_SHOOTS
    ? ` It would take ${count} to show it.`
    : ` About ${count} would show a curve of this size.`;
}

/** Angles below this are shown with a digit more, rad. */
const SMALL = 5e-4;

const degrees = (angle: number): string =>
  formatQuantity(Math.abs(angle), 'deg', Math.abs(angle) < SMALL ? 3 : 2);

/** What to turn, which way and how far, whether or not it is worth it. */
export function leanLines({ session, lean }: Told): string {
  const { units, setup } = session;
  const largest = Math.max(...lean.now.map(Math.abs));
  if (largest < NOTHING) return closedFormLine(lean);
  const level = setup.sight.level_length ?? defaultOf('sight.level_length');
  const travel = setup.sight.travel_length ?? defaultOf('sight.travel_length');
  const fine = units.smallLength === 'in' ? ('thou' as const) : ('mm' as const);
  const over = (angle: number, length: number): string =>
    `${formatQuantity(Math.abs(Math.tan(angle)) * length, fine, fine === 'thou' ? 1 : 3)} over ${formatQuantity(length, units.bowLength, 1)}`;
  const [top, foot] = lean.turn < 0 ? ['left', 'right'] : ['right', 'left'];
  const higher = lean.bowLean < 0 ? 'left' : 'right';
  const small = (length: number): string =>
    formatQuantity(length, units.smallLength, targetDigits(units) + 1);
  return [
    `The lean that cancels the curve: ${degrees(lean.turn)} ± ${degrees(lean.sd)} ${turnWord(lean.turn)} as the archer sees it, by either of`,
    `- the sight's travel (second axis): its top to the ${top}, its foot to the ${foot}, ${over(lean.turn, travel)} of travel;`,
    `- the bow, ${degrees(lean.bowLean)} ${turnWord(lean.bowLean)}: the level's ${higher} end up, ${over(lean.bowLean, level)} of level.`,
    `Then set the windage again. It leaves ${small(lean.residualMax)} of ${small(largest)} at the worst range.`,
    closedFormLine(lean),
    session.calibration.rig.conditions.place === null
      ? ''
      : "The Earth's turning at this latitude is counted in.",
  ]
    .filter((line) => line !== '')
    .join('\n');
}

function closedFormLine({ closedForm }: Told['lean']): string {
  if (closedForm === null)
    return 'The file names no parts that turn the arrow, so nothing is known of its spin.';
  const { gyroscopic, shaftForceCeiling } = closedForm;
  return `In closed form the spin alone asks for ${degrees(gyroscopic)} ${turnWord(gyroscopic)}, and at most ${degrees(shaftForceCeiling)} more if the shaft's side force were at its ceiling; that force has not been measured on arrows.`;
}
