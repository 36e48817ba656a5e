import { densityAltitude } from '../../atmosphere/standard.ts';
import type { Drawing } from '../../documents/page/drawing.ts';
import { TapeTooLong } from '../../documents/tape/strip-length.ts';
import { layOutTape, type TapePrint } from '../../documents/tape/tape.ts';
import type { StripForm, TapeSource } from '../../documents/tape/tape-content.ts';
import { at } from '../../numerics/at.ts';
import { formatQuantity, fromSi } from '../../quantities/format.ts';
import type { TapeForm } from '../../setup/assemble/tape-form.ts';
import { QuestionError } from '../asked/question-error.ts';
import { cautionOnPaper, shotCautions } from '../cautions.ts';
import { airLine, arrowLine } from '../head.ts';
import { isDraft } from '../refuse-contradiction.ts';
import type { Session } from '../session.ts';
import { warnings } from '../warnings.ts';
import type { SheetFindings, TapeFindings } from './findings.ts';
import { NEARBY_WORDS, neighbourHint, neighbourName, shortNotes, tapeName, unprovenWords } from './words.ts';

/** One tape of a sheet, and what it is for. */
export interface NamedTape {
  readonly session: Session;
  /** Counted from the top one, of a slider with several; null for the only one. */
  readonly pin: number | null;
  readonly tape: TapeFindings;
  readonly sheet: SheetFindings;
}

export interface Print extends TapePrint {
  /** What the answer says of the first tape: how good it is, and what makes it doubtful. */
  readonly good: string;
  readonly doubts: readonly string[];
  readonly unit: 'yd' | 'm';
  /** Of speed, from one neighbour to the next, m/s. */
  readonly step: number;
  /** The day that the sheet carries. */
  readonly day: string;
}

/** The page to print: the tapes, the neighbours of the first, and what must not be forgotten. */
export function tapeSheet(tapes: readonly [NamedTape, ...NamedTape[]], print: Print): Drawing {
  const [{ session, tape, sheet }] = tapes;
  const { title, units } = session;
  const { unit, step, day } = print;
  const neighbours = sheet.neighbours.map((strip): TapeSource => {
    const hint = neighbourHint(strip);
    const name = neighbourName(strip, step, units);
    return {
      name,
      caption: hint,
      along: [`${name}: ${hint}`, ...alongWords(at(tapes, 0), day)],
      ticks: strip.tape.ticks,
      zeroAt: sheet.zeroAt,
      shot: [],
      provenTo: sheet.provenTo,
    };
  });
  const content = {
    title,
    subtitle: [arrowLine(session), airLine(session), `${day}. ${print.good}`],
    unit,
    form: stripForm(tape.form),
    zero: { ...sheet.zero, shot: sheet.zeroShot },
    mains: tapes.map(
      (named): TapeSource => ({
        name: formatQuantity(named.session.calibration.rig.launchSpeed, units.speed, 0),
        caption: tapeName(named.session, named.pin) ?? 'Tape',
        along: alongWords(named, day),
        ticks: named.tape.ticks,
        zeroAt: named.sheet.zeroAt,
        shot: named.sheet.shot,
        provenTo: named.sheet.provenTo,
      }),
    ),
    before: neighbours.filter((_, i) => at(sheet.neighbours, i).faster < 0),
    after: neighbours.filter((_, i) => at(sheet.neighbours, i).faster > 0),
    nearby: neighbours.length === 0 ? null : NEARBY_WORDS,
    unproven: unprovenWords(unit),
    isDraft: isDraft(session),
    warnings: [
      ...warnings(session),
      ...print.doubts,
      ...shortNotes(tape, units, unit),
      ...shotCautions(session).map(cautionOnPaper),
    ],
  };
  try {
    return layOutTape(content, print);
  } catch (error) {
    throw error instanceof TapeTooLong ? tooLong(error, print) : error;
  }
}

const stripForm = ({ width, length, ticks, farAt, numbers }: TapeForm): StripForm => ({
  width: fromSi(width, 'mm'),
  length: length === null ? null : fromSi(length, 'mm'),
  ticks,
  farAt,
  numbers,
});

/** What tells a strip apart once it is cut out: bow or build, arrow, air or place, day. */
function alongWords({ session, pin }: NamedTape, day: string): readonly string[] {
  const { title, place, assembly, calibration, units } = session;
  const { rig } = calibration;
  return [
    ...(pin === null ? [] : [`pin ${pin}`]),
    place === null || place.name === null ? title : `${title}, ${place.name}`,
    formatQuantity(assembly.arrow.flying.mass, units.mass, units.mass === 'gr' ? 0 : 1),
    formatQuantity(rig.launchSpeed, units.speed, units.speed === 'fps' ? 0 : 1),
    `${formatQuantity(densityAltitude(rig.conditions.air.density), units.height, 0)} air`,
    day,
  ];
}

/** What can be done about a tape that the paper does not hold. */
function tooLong({ found, room, longest }: TapeTooLong, { paper, unit, join }: Print): QuestionError {
  const sheet = paper === 'a4' ? 'an A4' : 'a Letter';
  const wrong = `the longest tape would be ${Math.ceil(found)} mm long, and ${sheet} sheet holds ${Math.floor(room)} mm`;
  if (longest === null)
    return new QuestionError(wrong, 'Choose ranges closer together, or check sight.tape.travel_ratio.');
  const instead = join === true ? '' : ', or {join} to let it run on to a second strip';
  return new QuestionError(wrong, `Write {to} "${longest} ${unit}", the longest range that fits${instead}.`);
}
