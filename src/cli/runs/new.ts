import type { UnitSystem } from '../../quantities/display-units.ts';
import { starterSetup } from '../../setup/starter.ts';
import type { Io } from '../io.ts';
import { CommandLineError } from '../world/command-line-error.ts';

export interface NewOptions {
  readonly force?: boolean;
  readonly units: UnitSystem;
}

export function runNew(io: Io, file: string, { force = false, units }: NewOptions): void {
  if (file === '-')
    throw new CommandLineError('new: - is not a file name', 'Give a name: quillpath new setup.yaml.');
  if (io.exists(file) && !force)
    throw new CommandLineError(
      `${file} already exists`,
      'Choose another name, or use --force to replace it.',
    );
  io.writeWhole(file, starterSetup({ units }));
  io.out(`Wrote ${file}. Replace its example values with your own, then:

  quillpath check ${file}                  names what is wrong or missing
  quillpath marks ${file}                  the mark of every range
  quillpath tape ${file} --out tape.pdf    the tape to print at 100 %
`);
}
