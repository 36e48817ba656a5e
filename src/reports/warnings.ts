import { findings, isContradiction } from '../calibration/diagnose.ts';
import { marksSetAside } from '../setup/assemble/assemble-marks.ts';
import { findingWords } from './fit/finding-words.ts';
import type { Session } from './session.ts';

/** What makes every number of a session doubtful, a sentence or two each; none for most. */
export function warnings(session: Session): readonly string[] {
  return [...contradictionWarnings(session), ...unusedWarnings(session)];
}

const GRAVE = ['at bound', 'outlier', 'scatter'];

function contradictionWarnings(session: Session): readonly string[] {
  const { calibration } = session;
  if (!session.calibrated || !isContradiction(calibration)) return [];
  const [worst] = findings(calibration).filter(({ kind }) => GRAVE.includes(kind));
  const why = worst === undefined ? '' : `${findingWords(session, worst)} `;
  return [
    `The shot marks contradict the measurements or one another. ${why}"quillpath fit" tells all; ` +
      'until it is mended trust neither marks nor tape.',
  ];
}

function unusedWarnings({ setup, assembly, calibrated }: Session): readonly string[] {
  const unread = (setup.marks ?? []).filter(({ reading }) => reading !== undefined).length;
  const aside = marksSetAside(setup).length;
  const unknown = assembly.scale.scale === null && setup.sight.scale !== undefined && unread > 0;
  return [
    ...(unknown
      ? [
          `${groups(unread)} of an unknown scale cannot measure it and ${unread === 1 ? 'is' : 'are'} left out: ` +
            'readings at two different ranges are needed, of which at_zero is one.',
        ]
      : []),
    ...(aside > 0 && calibrated
      ? [
          `${groups(aside)} shot with the bow turned far over ${aside === 1 ? 'serves' : 'serve'} left and right ` +
            'only, not the heights.',
        ]
      : []),
  ];
}

const groups = (count: number): string => (count === 1 ? 'One group' : `${count} groups`);
