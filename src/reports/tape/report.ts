import { pencilResiduals } from '../../calibration/mark-residual.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { sliderPins } from '../../setup/assemble/pins.ts';
import type { Asked } from '../asked/option.ts';
import { positiveQuantity } from '../asked/quantity.ts';
import { cautionBlocks } from '../cautions.ts';
import { leftOutData } from '../disagreement-data.ts';
import { dataOf, tableOf } from '../field.ts';
import { PENCIL_FIELDS } from '../fit/fields.ts';
import { headBlocks } from '../head.ts';
import type { Occasion } from '../occasion.ts';
import { isDraft, refuseContradiction } from '../refuse-contradiction.ts';
import { note, paragraph, type Report, tableBlock, verdict, warning } from '../report.ts';
import type { Session, Sessions } from '../session.ts';
import { markWarnings, warnings } from '../warnings.ts';
import { againstFindings } from './against.ts';
import { AGAINST_NOTE, againstFields, againstWords } from './against-words.ts';
import { askedRanges } from './asked-ranges.ts';
import { tickFields } from './fields.ts';
import { sheetFindings, surenessOf, tapeFindings } from './findings.ts';
import type { question } from './question.ts';
import { type NamedTape, tapeSheet } from './sheet.ts';
import { DRAW_WORDS, goodTo, lengthWords, PRINT_WORDS, shortNotes, tapeName, verdictWords } from './words.ts';

/** Neighbours further apart than this are for other bows. */
const WIDEST_STEP = '20 fps';

export function report(
  [session, ...others]: Sessions,
  asked: Asked<typeof question.options>,
  { day, sheet }: Occasion,
): Report {
  const { title, calibrated, calibration, units } = session;
  refuseContradiction(session, asked.anyway);
  const step = positiveQuantity('step', asked.step, 'speed', WIDEST_STEP);
  const unit = asked.in === 'yards' ? 'yd' : 'm';
  const ranges = askedRanges(asked, unit);
  const named = (one: Session, count: number, pin: number | null, below: Metres): NamedTape => {
    const tape = tapeFindings(one, ranges, below);
    return { session: one, pin, tape, sheet: sheetFindings(one, tape, ranges, { count, step }) };
  };
  const [, ...lower] = sliderPins(session.setup.sight) ?? [];
  const top = lower.length === 0 ? null : 1;
  const ofPins = (one: Session): readonly NamedTape[] => lower.map((below, i) => named(one, 0, i + 2, below));
  const tapes = [
    named(session, sheet ? asked.neighbours : 0, top, si(0)),
    ...ofPins(session),
    ...others.flatMap((other) => [named(other, 0, top, si(0)), ...ofPins(other)]),
  ] as const;
  const [{ tape, sheet: found }] = tapes;
  const sure = surenessOf(session, tape);
  const good = goodTo(session, sure, unit);
  const doubts = markWarnings(session, tape.last.range, sure);
  const against = againstFindings(session, asked, tape, unit);
  const fields = tickFields(unit);
  return {
    title,
    blocks: [
      ...(against === null ? [] : [verdict(againstWords(against, units, unit))]),
      verdict(verdictWords(good, found.provenTo, unit)),
      ...headBlocks(session),
      {
        kind: 'sheet',
        about: tapes.map((one) => lengthWords(one.tape, unit, tapeName(one.session, one.pin))).join('; '),
      },
      ...doubts.map(warning),
      ...(against === null
        ? []
        : [tableBlock(tableOf(againstFields(unit), against.marks, units)), note(AGAINST_NOTE)]),
      paragraph(sheet ? PRINT_WORDS : DRAW_WORDS),
      ...shortNotes(tape, units, unit).map(note),
      ...cautionBlocks(session),
    ],
    rows:
      against === null
        ? tableOf(fields, tape.ticks, units)
        : tableOf(againstFields(unit), against.marks, units),
    data: {
      title,
      calibrated,
      warnings: [...warnings(session), ...doubts],
      draft: isDraft(session),
      ...leftOutData(session),
      zero_range_m: calibration.rig.zeroRange,
      // A door that writes the sheet puts the names of its files here.
      files: [],
      ticks: dataOf(fields, tape.ticks),
      // Counted from the archer's own line of the zero range.
      pencil_lines: dataOf(PENCIL_FIELDS, pencilResiduals(calibration)),
      strips: tapes.map((one) => stripData(one, fields)),
      against: against === null ? null : dataOf(againstFields(unit), against.marks),
      form: {
        width_m: tape.form.width,
        length_m: tape.form.length,
        ticks: tape.form.ticks,
        far_at: tape.form.farAt,
        numbers: tape.form.numbers,
        travel_ratio: tape.form.travelRatio,
      },
      ends_before_m: {
        contact: tape.endsBefore,
        reach: tape.beyond,
        slider: tape.sliderEndsBefore,
        place: tape.placeEndsBefore,
      },
      proven_to_m: found.provenTo,
    },
    sheet: sheet
      ? tapeSheet(tapes, {
          good,
          doubts,
          unit,
          paper: asked.page,
          copies: asked.copies,
          join: asked.join,
          day,
          step,
        })
      : null,
  };
}

/** One of the tapes of the sheet. */
const stripData = (
  { session: { build, place, calibration }, pin, tape, sheet }: NamedTape,
  fields: ReturnType<typeof tickFields>,
): object => ({
  build: build === null ? null : build.name,
  place: place === null ? null : place.name,
  pin,
  density_kgpm3: calibration.rig.conditions.air.density,
  launch_speed_mps: calibration.rig.launchSpeed,
  zeroed_at_m: sheet.zeroAt,
  ticks: dataOf(fields, tape.ticks),
});
