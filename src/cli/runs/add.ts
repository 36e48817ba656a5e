import type { UnitSystem } from '../../quantities/display-units.ts';
import { addShot } from '../../setup/add/add-shot.ts';
import { ShotWordsError } from '../../setup/add/shot-words.ts';
import { shortened } from '../../setup/echoed.ts';
import type { Io } from '../io.ts';
import { CommandLineError } from '../world/command-line-error.ts';
import { readNamedFile } from '../world/named-file.ts';

interface How {
  readonly units: UnitSystem;
  /** The name of the day that it belongs to. */
  readonly day?: string;
}

/** Enough of what was said to find it again. */
const LONGEST_ECHO = 80;

/** Put what was said into the file, and say how it was understood. Nothing is written unless the file can be read with it. */
export function runAdd(io: Io, file: string, words: string, how: How): void {
  if (file === '-')
    throw new CommandLineError(
      'add: standard input cannot be written to',
      'Give the name of a setup file: quillpath add setup.yaml "60 yd 31.9".',
    );
  const { text, understood, line, entry } = added(readNamedFile(io, file), file, words, how);
  io.writeWhole(file, text);
  io.out(`Understood: ${understood.join(', ')}.\n${file}, line ${line}: ${entry}\n`);
}

function added(text: string, file: string, words: string, how: How) {
  try {
    return addShot(text, file, words, how);
  } catch (error) {
    if (!(error instanceof ShotWordsError)) throw error;
    throw new CommandLineError(
      `add: "${shortened(error.found, LONGEST_ECHO)}" cannot be understood`,
      error.write,
    );
  }
}
