import { existsSync, readFileSync } from 'node:fs';
import type { Io } from '../../src/cli/io.ts';
import { run } from '../../src/cli/run.ts';
import { typeface } from './typeface.ts';

/** What a person at a terminal sees of one command, and the files it would have written. */
export interface Seen {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  readonly files: ReadonlyMap<string, string | Uint8Array>;
}

type Given = Readonly<Record<string, string>>;

/** What was run before, by its words and the files given. */
const runs = new Map<string, Promise<Seen>>();

/** What one command line shows. Nothing outside changes while the tests run, so the same words are run once for all of them. */
export function atTerminal(argv: readonly string[], given: Given = {}): Promise<Seen> {
  const key = JSON.stringify([argv, given]);
  const found = runs.get(key) ?? atTerminalAnew(argv, given);
  runs.set(key, found);
  return found;
}

/** The same on a terminal of so many columns. */
export const atWidth = (columns: number, argv: readonly string[], given: Given = {}): Promise<Seen> =>
  atTerminalAnew(argv, given, columns);

/**
 * Run one command line in process: files are read from the repository or from `given`, and written nowhere.
 *
 * @param answers what a person types, line by line, before going away; without them there is no terminal to answer at
 */
export async function atTerminalAnew(
  argv: readonly string[],
  given: Given = {},
  columns: number | null = null,
  answers?: readonly string[],
): Promise<Seen> {
  let [out, err] = ['', ''];
  const files = new Map<string, string | Uint8Array>();
  const left = [...(answers ?? [])];
  const io: Io = {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    readText: (path) => given[path] ?? readFileSync(path, 'utf8'),
    fonts: typeface,
    exists: (path) => path in given || existsSync(path),
    writeWhole: (path, content) => files.set(path, content),
    now: () => new Date(2026, 0, 2, 3, 4, 5),
    columns,
    asker: () =>
      answers === undefined
        ? null
        : async (prompt) => {
            out += prompt;
            return left.shift() ?? null;
          },
  };
  const code = await run(argv, io);
  return { code, out, err, files };
}
