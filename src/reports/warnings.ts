import { findings, isContradiction } from '../calibration/diagnose.ts';
import { marksSetAside } from '../setup/assemble/assemble-marks.ts';
import { shotsIn } from '../setup/assemble/shots.ts';
import { findingWords } from './fit/finding-words.ts';
import { ENTRY_LEFT_OUT, entersWind } from './not-measured.ts';
import type { Session } from './session.ts';

/** What makes every number of a session doubtful, a sentence or two each; none for most. */
export function warnings(session: Session): readonly string[] {
  return [...contradictionWarnings(session), ...unusedWarnings(session), ...windWarnings(session)];
}

const GRAVE = ['at bound', 'outlier', 'scatter'];

function contradictionWarnings(session: Session): readonly string[] {
  const { calibration } = session;
  if (!session.calibrated || !isContradiction(calibration)) return [];
  const [worst] = findings(calibration).filter(({ kind }) => GRAVE.includes(kind));
  const why = worst === undefined ? '' : `${findingWords(session, worst)} `;
  return [
    `The shot marks contradict the measurements or one another. ${why}Run "quillpath fit" for details. ` +
      'Do not rely on the marks or the tape until this is resolved.',
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
