import { compare } from '../../advice/builds/comparison.ts';
import type { AnswerOptions } from '../../cli/commands/shared-options.ts';
import type { Io } from '../../cli/io.ts';
import { present } from '../../cli/output/present.ts';
import { drawingFormat, writeDrawing } from '../../cli/output/write-drawing.ts';
import { openNamedFile } from '../../cli/world/named-file.ts';
import { bowWithBuilds } from '../../setup/assemble/assemble-bow.ts';
import { optionQuantity, optionRanges } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';
import { longTable } from './build-tables.ts';
import type { Compared } from './findings.ts';
import { compareScatter } from './groups.ts';
import { compareJson } from './json.ts';
import { compareText } from './text.ts';

export interface CompareOptions extends AnswerOptions {
  readonly from: string;
  readonly to: string;
  readonly every: string;
  readonly ring: string;
  readonly crosswind: string;
  readonly arrows: number;
  readonly out?: string;
  readonly page: 'a4' | 'letter';
}

export async function runCompare(io: Io, paths: readonly string[], options: CompareOptions): Promise<void> {
  if (options.out !== undefined) drawingFormat(options.out, 'sheet');
  const sessions = paths.map((path) => openNamedFile(io, path, options));
  const [session] = sessions;
  if (session === undefined) throw new RangeError('a comparison needs a file');
  const bows = sessions.map(bowWithBuilds);
  if (bows.reduce((count, { candidates }) => count + 1 + candidates.length, 0) < 2)
    throw new QuestionError(
      `${paths[0]}: there is nothing to compare it with`,
      'List builds under "builds:", or name a second file.',
    );
  const comparison = compare(withNamesApart(bows), {
    ranges: optionRanges(options),
    crosswind: optionQuantity('crosswind', options.crosswind, 'speed'),
    ring: optionQuantity('ring', options.ring, 'length'),
  });
  const groups = await compareScatter(io, comparison, options.arrows);
  const compared = { sessions, session, comparison, groups, files: [] };
  const files = options.out === undefined ? [] : await write(io, options.out, compared, options.page);
  const found = { ...compared, files };
  present(io, options, {
    text: () => compareText(found, io),
    json: () => compareJson(found),
    table: () => longTable(comparison, session.units),
  });
}

/** Two files of one title are told apart by a number. */
function withNamesApart(bows: readonly ReturnType<typeof bowWithBuilds>[]): typeof bows {
  return bows.map((bow, i) => {
    const before = bows.slice(0, i).filter(({ name }) => name === bow.name).length;
    return before === 0 ? bow : { ...bow, name: `${bow.name} (${before + 1})` };
  });
}

async function write(
  io: Io,
  path: string,
  compared: Compared,
  page: 'a4' | 'letter',
): Promise<readonly string[]> {
  const { compareSheet } = await import('./sheet.ts');
  return writeDrawing(io, path, compareSheet(io, compared, page), compared.session.title);
}
