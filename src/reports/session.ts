import { type DisplayUnits, displayUnits, type UnitSystem } from '../quantities/display-units.ts';
import type { OpenSetup } from '../setup/open.ts';

/** A setup opened for a question, with the units that its words are to use. */
export type Session = OpenSetup & { readonly units: DisplayUnits };

/** The setup a question is asked of, and those it is compared with. */
export type Sessions = readonly [Session, ...Session[]];

export const inUnits = (open: OpenSetup, system: UnitSystem): Session => ({
  ...open,
  units: displayUnits(system),
});
