import { type MovedMark, movedMarks } from '../../../advice/tuning/moved-marks.ts';
import { type TorqueNull, torqueNull } from '../../../advice/tuning/torque-null.ts';
import { HALF_SPREAD_OF_THREE } from '../../../advice/tuning/torque-settings.ts';
import { type Metres, si } from '../../../quantities/quantity.ts';
import { marksFor } from '../../../sight/marks.ts';
import { dataOf, tableOf } from '../../field.ts';
import { someRanges } from '../some-ranges.ts';
import { type Evening, type Logged, NO_MORE, needed, type StepAnswer, sinceChange } from '../step-answer.ts';
import { MOVED_MARK_FIELDS, SETTING_FIELDS } from '../torque-fields.ts';
import { torquePlot } from '../torque-plot.ts';
import { torqueLine, torqueParagraphs } from '../torque-words.ts';

/** A test nearer than this also shows how far to the side the arrow starts. */
const FAR_ENOUGH = 30 * 0.9144;

/** Where the sight would stand for hits that do not mind torque. */
export function torqueAnswer(evening: Evening, logged: readonly Logged[]): StepAnswer {
  const { session, arrowSd } = evening;
  const { setup, units } = session;
  const fresh = sinceChange(evening, logged, ['draw_length', 'cams', 'rest_forward']);
  const used = fresh.length === 0 ? logged : fresh;
  const extension = needed(setup.sight.extension, 'sight.extension');
  const gripToPeep = si<'m'>(setup.sight.peep_to_pin - extension);
  const found = torqueNull({
    gripToPeep,
    arrowSd,
    shots: used.map(({ entry }) => ({
      extension: needed(entry.extension, 'extension'),
      range: needed(entry.range, 'range'),
      left: needed(entry.left, 'left'),
      right: needed(entry.right, 'right'),
      turned: entry.turned ?? null,
    })),
  });
  const target = targetOf(found);
  const marks = target === null ? [] : movedMarksOf(evening, si<'m'>(gripToPeep + target));
  const near = found.settings.some(({ range }) => range < FAR_ENOUGH);
  return {
    ...NO_MORE,
    verdict: found.verdict,
    done: found.verdict === 'done',
    line: torqueLine(found, gripToPeep, units),
    paragraphs: torqueParagraphs(found, units),
    tables: [
      tableOf(SETTING_FIELDS, found.settings, units, 'What each extension showed'),
      ...(marks.length === 0
        ? []
        : [
            tableOf(MOVED_MARK_FIELDS, marks, units, 'Marks with the sight there: pin travel below the zero'),
          ]),
    ],
    plots: [torquePlot(found, gripToPeep, units)],
    notes: [
      `with: hits went the way the front of the bow turned, so the sight goes farther out; against: nearer. Inside: less than ` +
        `${HALF_SPREAD_OF_THREE} standard deviations either side, as three ordinary shots spread.`,
      ...(near
        ? [
            'At less than 30 yd the arrow also starts to one side by some tenths of an inch: shoot it at 40 to 60 yd.',
          ]
        : []),
      'Shoot the zero and the windage anew after any move. Where the sight should be cannot be had from the bow by a ruler.',
    ],
    data: dataFor(found, gripToPeep, marks),
  };
}

/** Where the sight goes: to its null, or as far towards it as the first move. */
function targetOf(found: TorqueNull): Metres | null {
  if (found.move === null) return null;
  return si(found.now.extension + found.move);
}

function movedMarksOf(
  { session: { calibration, setup, units } }: Evening,
  peepToPin: Metres,
): readonly MovedMark[] {
  const { marks } = marksFor(calibration.rig, someRanges(calibration.rig, units));
  return movedMarks(marks, setup.sight.peep_to_pin, peepToPin);
}

const dataFor = (found: TorqueNull, gripToPeep: Metres, marks: readonly MovedMark[]): object => ({
  grip_to_peep_m: gripToPeep,
  arrow_sd_per_m: found.arrowSd,
  settings: dataOf(SETTING_FIELDS, found.settings),
  null:
    found.null === null
      ? null
      : {
          extension_m: found.null.extension,
          extension_sd_m: found.null.sd,
          interval_m: found.null.interval,
          method: found.null.method,
        },
  torque_rad: found.torque,
  launch_share: found.launchShare,
  move_m: found.move,
  on_one_line: !found.offLine,
  now: {
    extension_m: found.now.extension,
    shift_per_side_in_sd: found.now.perSideInSd,
    group_growth: found.now.groupGrowth,
  },
  marks: dataOf(MOVED_MARK_FIELDS, marks),
});
