import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { paragraphs, present } from '../../cli/output/present.ts';
import { drawingFormat, writeDrawing } from '../../cli/output/write-drawing.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { anglesBothWays } from '../asked/angles.ts';
import { optionQuantity, optionRanges } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import { cautionLines, shotCautions } from '../cautions.ts';
import { headLines } from '../head.ts';
import { contactNote } from '../marks/words.ts';
import { type CardFindings, cardFindings } from './findings.ts';
import { cardSheet } from './sheet.ts';
import { belowNoughtNote, cardCuts, cardTable } from './tables.ts';

export interface CardOptions extends AnswerOptions {
  readonly out: string;
  readonly page: 'a4' | 'letter';
  readonly from: string;
  readonly to: string;
  readonly every: string;
  readonly crosswind: string;
  readonly steepest: string;
  readonly angleStep: string;
}

export async function runCard(io: Io, path: string, options: CardOptions): Promise<void> {
  drawingFormat(options.out, 'card');
  const session = openNamedFile(io, path, options);
  const crosswind = optionQuantity('crosswind', options.crosswind, 'speed');
  if (!(crosswind >= 0))
    throw new QuestionError(
      `{crosswind}: ${options.crosswind} is negative, but a speed cannot be`,
      'Write it without a minus sign.',
    );
  const found = cardFindings(session, {
    ranges: optionRanges(options),
    slopes: anglesBothWays(
      { option: 'steepest', text: options.steepest },
      { option: 'angleStep', text: options.angleStep },
    ).filter((slope) => slope !== 0),
    crosswind,
  });
  const files = await writeDrawing(io, options.out, cardSheet(io, found, options.page), session.title);
  present(io, options, {
    text: () => text(found, files),
    json: () => json(found, files),
    table: () => cardTable(found),
  });
}

const json = ({ session, crosswind, rows, slopes }: CardFindings, files: readonly string[]): object => ({
  title: session.title,
  calibrated: session.calibrated,
  zero_range_m: session.calibration.rig.zeroRange,
  crosswind_mps: crosswind,
  files,
  rows: rows.map(({ mark, uncertainty, ...row }) => ({
    range_m: mark.range,
    reading: mark.reading,
    reading_sd: mark.reading === null ? null : uncertainty.readingSd,
    travel_m: mark.travel,
    travel_sd_m: uncertainty.travelSd,
    on_target_sd_m: uncertainty.onTargetSd,
    highest_m: mark.highest.height,
    time_s: row.time,
    speed_mps: row.speed,
    energy_J: row.energy,
    momentum_kgmps: row.momentum,
    wind_drift_m: row.windDrift,
    cant_m_per_rad: row.lateralPerRadian,
  })),
  slopes: slopes.map(({ range, slope, markRange }) => ({
    range_m: range,
    slope_rad: slope,
    mark_range_m: markRange,
    cut_m: markRange === null ? null : range - markRange,
  })),
});

const text = (found: CardFindings, files: readonly string[]): string =>
  paragraphs([
    headLines(found.session).join('\n'),
    `Wrote ${files.join(', ')}.`,
    renderTableText(cardTable(found)),
    ...(found.slopes.length === 0
      ? []
      : ['Uphill (+) and downhill (-), take this off the range:', renderTableText(cardCuts(found))]),
    belowNoughtNote(found),
    found.touching === null ? '' : contactNote(found.touching, found.session.units),
    cautionLines(shotCautions(found.session)),
  ]);
