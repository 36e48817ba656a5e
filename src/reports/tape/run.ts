import { markUncertainty } from '../../calibration/mark-uncertainty.ts';
import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { paragraphs, present } from '../../cli/output/present.ts';
import { drawingFormat, writeDrawing } from '../../cli/output/write-drawing.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import { layOutTape } from '../../documents/tape/tape.ts';
import { type DisplayUnit, formatQuantity, fromSi, symbolOf, toSi } from '../../quantities/format.ts';
import { marksFor } from '../../sight/marks.ts';
import {
  neighbourStrips,
  type Tape,
  type TapeRange,
  tapeLength,
  tapeOf,
  tapePlaces,
} from '../../sight/tape.ts';
import { optionQuantity } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import { cautionLines, cautionOnPaper, shotCautions } from '../cautions.ts';
import { airLine, arrowLine, headLines } from '../head.ts';
import { reachNote } from '../marks/words.ts';
import type { Session } from '../session.ts';
import { isToldSpread } from '../told-spread.ts';
import { warnings } from '../warnings.ts';

export interface TapeOptions extends AnswerOptions {
  readonly out: string;
  readonly page: 'a4' | 'letter';
  readonly in: 'yards' | 'metres';
  readonly from: string;
  readonly to: string;
  readonly copies: number;
  readonly neighbours: number;
  readonly step: string;
}

export async function runTape(io: Io, path: string, options: TapeOptions): Promise<void> {
  drawingFormat(options.out, 'tape');
  const session = openNamedFile(io, path, options);
  const unit = options.in === 'yards' ? 'yd' : 'm';
  const ranges = rangesOf(options, unit);
  const main = tapeOf(session.calibration.rig, ranges, ratioOf(session));
  const doubts = warnings(session);
  const cautions = shotCautions(session);
  const drawing = draw(
    io,
    session,
    main,
    [...doubts, ...noteLines(session, main), ...cautions.map(cautionOnPaper)],
    options,
    unit,
  );
  const files = await writeDrawing(io, options.out, drawing, session.title);
  present(io, options, {
    text: () => text(session, main, files, cautionLines(cautions), unit),
    json: () => ({
      title: session.title,
      calibrated: session.calibrated,
      warnings: doubts,
      zero_range_m: session.calibration.rig.zeroRange,
      files,
      ticks: main.ticks.map(({ range, along }) => ({ range_m: range, along_m: along })),
    }),
    table: () => ({
      columns: [
        { name: 'range', unit, digits: 0 },
        { name: 'along', unit: 'mm', digits: 3 },
      ],
      rows: main.ticks.map(({ label, along }) => [label, fromSi(along, 'mm')]),
    }),
  });
}

/** The whole yards or metres from the first to the last range. */
function rangesOf({ from, to }: TapeOptions, unit: 'yd' | 'm'): readonly TapeRange[] {
  const first = Math.ceil(fromSi(optionQuantity('--from', from, 'length'), unit) - 1e-9);
  const last = Math.floor(fromSi(optionQuantity('--to', to, 'length'), unit) + 1e-9);
  if (!(first > 0 && last > first))
    throw new QuestionError(
      `--from ${from} --to ${to} leaves no tape`,
      'Write --from "20 yd" --to "100 yd", the nearer first.',
    );
  return Array.from({ length: last - first + 1 }, (_, i) => ({
    range: toSi(first + i, unit),
    label: first + i,
  }));
}

const ratioOf = ({ setup }: Session): number => setup.sight.tape?.travel_ratio ?? 1;

function draw(
  io: Io,
  session: Session,
  main: Tape,
  printed: readonly string[],
  options: TapeOptions,
  unit: 'yd' | 'm',
) {
  const { setup, calibration, units } = session;
  const { rig } = calibration;
  const ratio = ratioOf(session);
  const step = optionQuantity('step', options.step, 'speed');
  const neighbours = neighbourStrips(rig, rangesOf(options, unit), ratio, {
    count: options.neighbours,
    step,
  }).map(({ faster, tape }) => ({
    name: `${faster > 0 ? '+' : '−'}${formatQuantity(Math.abs(faster), units.speed, 0)}`,
    ticks: tape.ticks,
  }));
  const shot = calibration.residuals.flatMap(({ measurement }) =>
    measurement.kind === 'mark' ? [measurement.range] : [],
  );
  const ends = [main.ticks[0]?.range ?? 0, main.ticks.at(-1)?.range ?? 0] as const;
  const [zero, ...marked] = tapePlaces(
    rig,
    [rig.zeroRange, ...shot.filter((range) => range >= ends[0] && range <= ends[1])],
    ratio,
  );
  return layOutTape(
    {
      title: session.title,
      subtitle: [
        arrowLine(session),
        airLine(session),
        `${io.now().toISOString().slice(0, 10)}. ${surenessLine(session, main)}`,
      ],
      name: formatQuantity(rig.launchSpeed, units.speed, 0),
      unit,
      increases: setup.sight.scale?.increases ?? 'down',
      ticks: main.ticks,
      calibration: marked,
      zero: { range: rig.zeroRange, branch: zero?.branch ?? 'far' },
      neighbours,
      warnings: printed,
    },
    { paper: options.page, copies: options.copies },
  );
}

/** What one standard uncertainty of the marks is on the target, near, half-way and far. */
function surenessLine({ calibration, units }: Session, { ticks }: Tape): string {
  const ranges = [ticks[0], ticks[ticks.length >> 1], ticks.at(-1)].flatMap((tick) => tick?.range ?? []);
  const sure = markUncertainty(calibration, marksFor(calibration.rig, ranges));
  if (!sure.every(({ onTargetSd }) => isToldSpread(onTargetSd)))
    return 'No mark ties the scale to the arrow yet.';
  const told = sure.map(
    ({ range, onTargetSd }) =>
      `${formatQuantity(onTargetSd, units.smallLength, 1)} at ${formatQuantity(range, units.range, 0)}`,
  );
  return `Good to ± ${told.join(', ')} on the target (one standard uncertainty).`;
}

const touchNote = ({ units }: Session, { endsBefore }: Tape): string =>
  endsBefore === null
    ? ''
    : `The tape ends before ${formatQuantity(endsBefore, units.range, 0)}: from there on the arrow or its vanes would touch the sight.`;

/** Why the tape is shorter than was asked for. */
const noteLines = (session: Session, main: Tape): readonly string[] =>
  [touchNote(session, main), main.beyond === null ? '' : reachNote(main.beyond, session.units)].filter(
    (line) => line !== '',
  );

function text(
  session: Session,
  main: Tape,
  files: readonly string[],
  cautions: string,
  unit: DisplayUnit,
): string {
  const [first, last] = [main.ticks[0], main.ticks.at(-1)];
  return paragraphs([
    headLines(session).join('\n'),
    `Wrote ${files.join(', ')}: ${first?.label} to ${last?.label} ${symbolOf(unit)}, ${formatQuantity(tapeLength(main.ticks), 'mm', 1)} long.`,
    'Print at 100 % ("actual size") and lay a ruler on the check bars before cutting.',
    ...noteLines(session, main),
    cautions,
  ]);
}
