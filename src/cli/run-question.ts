import type { UnitSystem } from '../quantities/display-units.ts';
import type { Question } from '../reports/asked/question.ts';
import type { Occasion } from '../reports/occasion.ts';
import { QUESTIONS, type QuestionName } from '../reports/questions.ts';
import { ownThread } from '../reports/tasks.ts';
import { flagOf } from './commands/flag.ts';
import type { Io } from './io.ts';
import { type Form, printReport } from './output/print-report.ts';
import { progressBar } from './output/progress.ts';
import { drawingFormat, writeDrawing } from './output/write-drawing.ts';
import { CommandLineError } from './world/command-line-error.ts';
import { documentDate } from './world/document-date.ts';
import { INPUT_NAMES } from './world/input-names.ts';
import { openNamedFile, readOptionFile } from './world/named-file.ts';

/** What a command line said besides the setups. */
export interface Answering extends Form {
  readonly units: UnitSystem;
  readonly uncalibrated?: boolean;
  readonly out?: string;
  /** The day that the document carries. */
  readonly date?: string;
  /** The options of the question that were written. */
  readonly given: Readonly<Record<string, unknown>>;
}

/** Ask one question of the setups named, write its document if one was asked for, and print its report. */
export async function runQuestion(
  io: Io,
  name: QuestionName,
  paths: readonly [string, ...string[]],
  { units, uncalibrated, out, date, given, ...form }: Answering,
): Promise<void> {
  const asked = await QUESTIONS[name].question();
  if (out !== undefined && asked.sheet !== null) drawingFormat(out, asked.sheet.example);
  const read = [...paths, ...namesOfTexts(asked, given)];
  if (read.filter((path) => INPUT_NAMES.includes(path)).length > 1)
    throw new CommandLineError('standard input can be read only once', 'Write - for one of the files.');
  const overwritten =
    out === undefined ? undefined : read.find((path) => io.isSameFile?.(path, out) === true);
  if (overwritten !== undefined)
    throw new CommandLineError(
      `--out: ${out} is the file ${overwritten} that the answer is made from`,
      'Choose another name for the document.',
    );
  const open = (path: string) => openNamedFile(io, path, { units, uncalibrated });
  const [first, ...others] = paths;
  // What the environment says of dates spoils no answer without a document.
  const dated = documentDate(out === undefined ? { now: io.now } : io, date);
  const { json, csv, all } = form;
  const reading = json === true || csv === true || all === true ? 'whole' : 'short';
  const occasion = occasionOf(io, { day: dated.day, sheet: out !== undefined, reading });
  const sessions = [open(first), ...others.map(open)] as const;
  const report = await QUESTIONS[name].ask(sessions, withTexts(io, asked, given), units, occasion);
  const { sheet, title } = report;
  const files =
    out === undefined || sheet === null
      ? []
      : await writeDrawing(io, out, sheet, { title, madeAt: dated.madeAt });
  printReport(io, form, report, asked.sheet === null ? null : files);
}

/** The names of the other files that are read. */
const namesOfTexts = ({ options }: Question, given: Answering['given']): readonly string[] =>
  Object.entries(given).flatMap(([option, value]) =>
    options[option]?.kind === 'text file' && typeof value === 'string' ? [value] : [],
  );

/** What was given, with the text of a file in the place of its name. */
const withTexts = (io: Io, { options }: Question, given: Answering['given']): Answering['given'] =>
  Object.fromEntries(
    Object.entries(given).map(([name, value]) => {
      const option = options[name];
      if (option?.kind !== 'text file' || typeof value !== 'string') return [name, value];
      const wanted = { flag: flagOf(name), what: option.what };
      return [name, { name: value, text: readOptionFile(io, value, wanted) }];
    }),
  );

const occasionOf = (io: Io, document: Pick<Occasion, 'day' | 'sheet' | 'reading'>): Occasion => ({
  ...document,
  pool: async () => (await io.pool?.()) ?? ownThread,
  progress: (label, total) => progressBar(io, label, total),
});
