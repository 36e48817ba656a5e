import type { TunedBuild } from '../advice/builds/tuned-build.ts';
import { type DisplayUnits, displayUnits, type UnitSystem } from '../quantities/display-units.ts';
import type { PlaceConditions, Warmth } from '../setup/assemble/assemble-place.ts';
import type { OpenSetup } from '../setup/open.ts';

/** A place that answers are for, other than the file's own. */
export interface Place {
  /** As in the file's `places`; null for one that was asked for by its air. */
  readonly name: string | null;
  readonly conditions: PlaceConditions;
  readonly warmth: Warmth;
}

/** An entry of the file's `builds` that answers are for. */
interface ChosenBuild extends Pick<TunedBuild, 'speedFrom'> {
  readonly name: string;
}

/** A setup opened for a question, with the units that its words are to use. */
export type Session = OpenSetup & {
  readonly units: DisplayUnits;
  /** Where the answers are for; null for the file's own air. */
  readonly place: Place | null;
  /** The build that the answers are for; null for the file's own arrow. */
  readonly build: ChosenBuild | null;
  /** As it was opened: what was shot is judged there, whatever the answers are for. */
  readonly home: OpenSetup;
};

/** The setup a question is asked of, and those it is compared with. */
export type Sessions = readonly [Session, ...Session[]];

export const inUnits = (open: OpenSetup, system: UnitSystem): Session => ({
  ...open,
  units: displayUnits(system),
  place: null,
  build: null,
  home: open,
});

/** The session as it was opened, with the place, the arrow and the sight of the file. */
export const atHome = ({ home, units }: Session): Session => ({
  ...home,
  units,
  place: null,
  build: null,
  home,
});
