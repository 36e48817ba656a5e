import process from 'node:process';
import { createInterface, type Interface } from 'node:readline';

/** The lines that were typed: several may come at once when they are pasted, and none may be lost between two questions. */
let open: Interface | undefined;
let isClosed = false;
const typed: string[] = [];
let waiting: ((line: string | null) => void) | undefined;

/** One line from the person at the terminal; null when there are no more, as after Ctrl-C or Ctrl-D. */
export function askLine(prompt: string): Promise<string | null> {
  open ??= opened();
  process.stdin.ref();
  open.setPrompt(prompt);
  if (!isClosed) open.prompt();
  return new Promise<string | null>((resolve) => {
    const first = typed.shift();
    if (first !== undefined) resolve(first);
    else if (isClosed) resolve(null);
    else waiting = resolve;
  }).finally(() => {
    // Between two questions nothing keeps the program from ending.
    process.stdin.unref();
  });
}

function opened(): Interface {
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  lines.on('line', (line) => {
    if (waiting === undefined) typed.push(line);
    else answer(line);
  });
  lines.on('close', () => {
    isClosed = true;
    answer(null);
  });
  return lines;
}

function answer(line: string | null): void {
  const resolve = waiting;
  waiting = undefined;
  resolve?.(line);
}
