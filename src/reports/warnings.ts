import { type Finding, findings } from '../calibration/diagnose.ts';
import { estimateOf } from '../calibration/fit.ts';
import type { MarkUncertainty } from '../calibration/mark-uncertainty.ts';
import { formatQuantity, fromSi, symbolOf } from '../quantities/format.ts';
import type { Metres } from '../quantities/quantity.ts';
import { marksSetAside } from '../setup/assemble/assemble-marks.ts';
import { shotsIn } from '../setup/assemble/shots.ts';
import { disagreementWords } from './disagreement-words.ts';
import { neededExampleWarnings } from './example-words.ts';
import { findingWords } from './fit/finding-words.ts';
import { ENTRY_LEFT_OUT, entersWind } from './not-measured.ts';
import { atHome, type Session } from './session.ts';
import { staleWarnings } from './stale-warning.ts';
import { unseenWords } from './unseen-words.ts';

/** What makes every number of a session doubtful, a sentence or two each; none for most. */
export function warnings(session: Session): readonly string[] {
  const home = atHome(session);
  return [
    ...neededExampleWarnings(session),
    ...contradictionWarnings(home),
    ...staleWarnings(home),
    ...unusedWarnings(home),
    ...windWarnings(session),
    ...warmthWarnings(session),
    ...unmeasuredWarnings(session),
  ];
}

function contradictionWarnings(session: Session): readonly string[] {
  const words = disagreementWords(session);
  return words === '' ? [] : [words];
}

/** Of what a fit finds, what concerns every mark that rests on it. */
const TOLD_WITH_MARKS: readonly Finding['kind'][] = [
  'at bound',
  'outlier',
  'one of several',
  'other unit',
  'scatter',
];

/**
 * What makes marks doubtful beyond what makes every number so, for all that prints marks: what the fit finds in the shots, and
 * how much could be wrong in them without showing.
 *
 * @param farRange the farthest that is printed
 * @param sure how sure marks of the session are, as far as that has been worked out
 */
export function markWarnings(
  session: Session,
  farRange: Metres,
  sure: readonly MarkUncertainty[],
): readonly string[] {
  const home = atHome(session);
  const { calibration, disagreement, calibrated } = home;
  if (!calibrated) return [];
  const known = session.calibration === calibration ? sure : [];
  return [
    ...findings(calibration, disagreement)
      .filter(({ kind }) => TOLD_WITH_MARKS.includes(kind))
      .map((finding) => findingWords(home, finding)),
    ...unseenWords(home, farRange, known),
  ];
}

function unusedWarnings({ setup, assembly, calibrated }: Session): readonly string[] {
  const unread = shotsIn(setup).marks.filter(({ reading }) => reading !== undefined).length;
  const aside = marksSetAside(setup).length;
  const unknown = assembly.scale.scale === null && setup.sight.scale !== undefined && unread > 0;
  return [
    ...(unknown
      ? [
          `${groups(unread)} cannot measure the unknown scale and ${unread === 1 ? 'is' : 'are'} left out: ` +
            'readings at two different ranges are needed, and at_zero counts as one.',
        ]
      : []),
    ...(aside > 0 && calibrated
      ? [
          `${groups(aside)} shot with the bow canted far over ${aside === 1 ? 'counts' : 'count'} for left and ` +
            'right only, not for height.',
        ]
      : []),
  ];
}

/** A wind in the file blows an arrow of unknown parts less far than it should: what is left out, and by how much it matters. */
function windWarnings({ calibration }: Session): readonly string[] {
  const { arrow, wind } = calibration.rig.conditions;
  const blows = Math.hypot(wind.across, wind.up) > NOTICED_WIND;
  return blows && !entersWind(arrow) ? [`The wind of the file. ${ENTRY_LEFT_OUT}`] : [];
}

/** m/s: a drift of 0.2 in at 100 yd. */
const NOTICED_WIND = 0.05;

const groups = (count: number): string => (count === 1 ? 'One group' : `${count} groups`);

/** A place much colder or warmer than the air that the bow was measured in, where nobody measured what that does to it. */
function warmthWarnings({ place, units }: Session): readonly string[] {
  if (place === null || place.warmth.isMeasured || place.warmth.faster.sd === 0) return [];
  const { warmer, faster } = place.warmth;
  const { temperature: unit } = units;
  const degrees = Math.abs(fromSi(warmer, unit) - fromSi(0, unit)).toFixed(0);
  return [
    `It is ${degrees} ${symbolOf(unit)} ${warmer < 0 ? 'colder' : 'warmer'} there than where the bow was ` +
      'measured. Nobody measured what that ' +
      `does to its speed: ± ${formatQuantity(faster.sd, units.speed, 1)} is assumed, and is in every ± here.`,
  ];
}

/** A launch speed that rests on a guess or a rating, and on the marks. */
function unmeasuredWarnings(session: Session): readonly string[] {
  const { setup, calibration, calibrated } = atHome(session);
  if (setup.launch.speed !== 'unknown') return [];
  const { value, sd } = estimateOf(calibration, 'launch_speed');
  const { speed } = session.units;
  const from = setup.bow.rating === undefined ? 'what compound bows shoot' : "the bow's rating";
  return [
    `Nobody measured the launch speed: ${formatQuantity(value, speed, 0)} ± ${formatQuantity(sd, speed, 0)} comes from ` +
      `${from}${calibrated ? ' and from what was shot' : ''}. A chronograph would make every mark surer.`,
  ];
}
