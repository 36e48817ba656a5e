/** The key paths of the standard uncertainties that something is computed from, without the positions in lists. */
const read = new Set<string>();

/** Reads one standard uncertainty of a section, and records that it is read. */
function reader<K extends `${string}_sd`>(section: string, key: K) {
  read.add(`${section}.${key}`);
  return <V>(from: { readonly [P in K]?: V }): V | undefined => from[key];
}

/**
 * The standard uncertainties that a file may state, each undefined where it does not. A computation asks for them here and
 * nowhere else, so that `unusedUncertainties` knows of every one that is used; a test refuses other ways to read them.
 */
export const statedSd = {
  launchSpeed: reader('launch', 'speed_sd'),
  speedPerDegree: reader('launch', 'speed_per_degree_sd'),
  virtualMass: reader('bow', 'virtual_mass_sd'),
  chronographed: reader('bow.chronographed', 'speed_sd'),
  peepHeight: reader('bow', 'peep_height_sd'),
  dragCoefficient: reader('arrow', 'drag_coefficient_sd'),
  buildMass: reader('builds.arrow', 'mass_sd'),
  peepToPin: reader('sight', 'peep_to_pin_sd'),
  travelPerUnit: reader('sight.scale', 'travel_per_unit_sd'),
  readingAtZero: reader('sight.scale', 'at_zero_sd'),
  markReading: reader('marks', 'reading_sd'),
  onTape: reader('marks', 'on_tape_sd'),
  travelRatio: reader('sight.tape', 'travel_ratio_sd'),
  daySpeed: reader('days', 'speed_sd'),
  markRange: reader('marks', 'range_sd'),
  markHeight: reader('marks', 'vertical_sd'),
  markLateral: reader('marks', 'lateral_sd'),
  markCant: reader('marks', 'cant_sd'),
  speedDownrange: reader('speeds', 'speed_sd'),
  drop: reader('drops', 'drop_sd'),
  lean: reader('sight', 'lean_sd'),
  windSpeed: reader('wind', 'speed_sd'),
  windFrom: reader('wind', 'from_sd'),
};

/** A build's arrow and launch, and what was shot on a day, are read as those of the file are. */
export const isRead = (key: string): boolean =>
  read.has(key) || read.has(key.replace(/^(builds|days)\./, ''));
