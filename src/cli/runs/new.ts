import type { UnitSystem } from '../../quantities/display-units.ts';
import { starterSetup } from '../../setup/starter.ts';
import type { Io } from '../io.ts';
import { CommandLineError } from '../world/command-line-error.ts';

export interface NewOptions {
  readonly force?: boolean;
  /** Written in metric units, as with --units metric. */
  readonly metric?: boolean;
  /** Write the template at once, at a terminal too. */
  readonly template?: boolean;
  readonly units: UnitSystem;
}

/** A new setup file: by asking at a terminal, the commented template elsewhere. */
export async function runNew(io: Io, file: string, options: NewOptions): Promise<void> {
  const { force = false, metric = false, template = false } = options;
  const units = metric ? 'metric' : options.units;
  if (file === '-')
    throw new CommandLineError('new: - is not a file name', 'Give a name: quillpath new setup.yaml.');
  if (io.exists(file) && !force)
    throw new CommandLineError(
      `${file} already exists`,
      'Choose another name, or use --force to replace it.',
    );
  const ask = template || io.asker === undefined ? null : io.asker();
  if (ask !== null) {
    const { interview } = await import('./interview.ts');
    const text = await interview({ say: (words) => io.out(`${words}\n`), ask }, units);
    if (text === null) {
      io.out('\nNothing was written.\n');
      return;
    }
    io.writeWhole(file, text);
    io.out(`\nWrote ${file}. Then:\n${next(file)}`);
    return;
  }
  io.writeWhole(file, starterSetup({ units }));
  io.out(`Wrote ${file}. Replace its example values with your own, then:\n${next(file)}`);
}

const next = (file: string): string => `
  quillpath check ${file}                  names what is wrong or missing
  quillpath marks ${file}                  the mark of every range
  quillpath tape ${file} --out tape.pdf    the tape to print at 100 %
`;
