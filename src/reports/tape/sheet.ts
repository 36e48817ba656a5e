import type { Drawing } from '../../documents/page/drawing.ts';
import { layOutTape } from '../../documents/tape/tape.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { DEFAULT_WORDS } from '../../setup/assemble/defaults.ts';
import { cautionOnPaper, shotCautions } from '../cautions.ts';
import { airLine, arrowLine } from '../head.ts';
import { isDraft } from '../refuse-contradiction.ts';
import type { Session } from '../session.ts';
import { markWarnings, warnings } from '../warnings.ts';
import type { SheetFindings, TapeFindings } from './findings.ts';
import { neighbourName, shortNotes, surenessWords } from './words.ts';

interface Print {
  readonly unit: 'yd' | 'm';
  readonly paper: 'a4' | 'letter';
  readonly copies: number;
  /** The day that the sheet carries. */
  readonly day: Date;
}

/** The page to print: the tape, its neighbours, and what must not be forgotten. */
export function tapeSheet(
  session: Session,
  tape: TapeFindings,
  { neighbours, shot, zero, sureness }: SheetFindings,
  { unit, paper, copies, day }: Print,
): Drawing {
  const { setup, calibration, title, units } = session;
  return layOutTape(
    {
      title,
      subtitle: [
        arrowLine(session),
        airLine(session),
        `${day.toISOString().slice(0, 10)}. ${surenessWords(sureness, units)}`,
      ],
      name: formatQuantity(calibration.rig.launchSpeed, units.speed, 0),
      unit,
      increases: setup.sight.scale?.increases ?? DEFAULT_WORDS['sight.scale.increases'],
      ticks: tape.ticks,
      calibration: shot,
      zero,
      isDraft: isDraft(session),
      neighbours: neighbours.map((strip) => ({
        name: neighbourName(strip, units),
        ticks: strip.tape.ticks,
      })),
      warnings: [
        ...warnings(session),
        ...markWarnings(session, tape.last.range),
        ...shortNotes(tape, units),
        ...shotCautions(session).map(cautionOnPaper),
      ],
    },
    { paper, copies },
  );
}
