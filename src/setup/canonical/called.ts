/** Other names of the keys of a section, by the key; a key with dots stands in a section below. */
type Names = Readonly<Record<string, string>>;

const WEIGHT = { mass: 'weight grains' };

const AIR: Names = {
  temperature: 'temp',
  altitude: 'elevation',
  humidity: 'relative_humidity rh',
  pressure: 'station_pressure absolute_pressure',
};

/**
 * What archers call the keys of the setup file, by the section that they stand in; common practice, no source. Letter case,
 * blanks, hyphens and a capital in the middle of a word are taken away before a name is looked up. A name that may be two things
 * is not here: a weight of a bow may be its mass, a barometer's pressure that of the sea level.
 */
const CALLED: Readonly<Record<string, Names>> = {
  '': {
    marks: 'shots groups sight_marks shot_marks',
    air: 'weather atmosphere',
  },
  bow: {
    peak_draw_weight: 'draw_weight peak_weight poundage',
    draw_length: 'draw',
    brace_height: 'brace',
    rating: 'ibo ata rated rated_speed',
    hand: 'handed handedness',
  },
  'bow.rating': { arrow_mass: 'arrow_weight', draw_weight: 'weight', draw_length: 'draw', speed: 'velocity' },
  'bow.chronographed': { arrow_mass: 'arrow_weight mass weight', speed: 'velocity' },
  arrow: {
    mass: 'weight total_weight total_mass grains tam taw',
    diameter: 'outside_diameter outer_diameter od shaft_diameter',
    balance: 'balance_point',
    drag_coefficient: 'drag cd',
    'parts.shaft.deflection': 'spine static_spine',
    'parts.shaft.mass_per_length': 'gpi grains_per_inch',
    'parts.shaft': 'shaft tube',
    'parts.insert': 'insert',
    'parts.collar': 'collar',
    'parts.point': 'point tip head field_point broadhead',
    'parts.nock': 'nock',
    'parts.vanes': 'vanes fletching fletchings feathers fletch vane',
  },
  'arrow.parts': {
    point: 'tip head field_point broadhead',
    vanes: 'fletching fletchings feathers fletch vane',
    shaft: 'tube',
    collar: 'outsert ring sleeve',
  },
  'arrow.parts.shaft': {
    deflection: 'spine static_spine',
    mass_per_length: 'gpi grains_per_inch weight_per_inch',
    inner_diameter: 'id inside_diameter bore',
    length: 'cut_length cut',
  },
  'arrow.parts.insert': WEIGHT,
  'arrow.parts.collar': { ...WEIGHT, diameter: 'od outside_diameter' },
  'arrow.parts.point': { ...WEIGHT, shape: 'type style' },
  'arrow.parts.point.blades': {
    count: 'number blades',
    cutting_diameter: 'cut cutting_width cut_diameter diameter',
  },
  'arrow.parts.nock': { ...WEIGHT, lighted: 'lit' },
  'arrow.parts.vanes': {
    mass: 'weight weight_each grains',
    count: 'number',
    root_chord: 'length vane_length',
    angle: 'helical offset vane_angle',
    turn: 'direction rotation clocking',
  },
  'arrow.parts.others': { ...WEIGHT, from_nock: 'position' },
  launch: { speed: 'velocity arrow_speed fps' },
  sight: {
    peep_to_pin: 'sight_radius eye_to_pin peep_to_sight',
    zero_range: 'zero sighted_in zero_distance',
    scale: 'dial',
  },
  'sight.scale': { at_zero: 'zero reading_at_zero', travel_per_unit: 'travel_per_number travel_per_click' },
  air: AIR,
  places: { ...AIR, name: 'place' },
  days: { temperature: 'temp', speed: 'velocity', date: 'day', marks: 'shots groups sight_marks' },
  wind: { from: 'direction' },
  marks: {
    range: 'distance yards',
    reading: 'sight_mark setting mark dial',
    arrows: 'shots count',
    group: 'group_size size',
    lateral: 'left_right sideways horizontal',
    vertical: 'high_low up_down',
    note: 'notes comment',
    date: 'day',
  },
  speeds: { range: 'distance', speed: 'velocity' },
  drops: { range: 'distance', aimed_with: 'pin mark' },
};

/** Sections for which the one number that they are about may stand: `point: 100 gr`. */
const SHORT_FOR: Readonly<Record<string, string>> = {
  launch: 'speed',
  'bow.rating': 'speed',
  'arrow.parts.insert': 'mass',
  'arrow.parts.collar': 'mass',
  'arrow.parts.point': 'mass',
  'arrow.parts.nock': 'mass',
};

/** The key of the number that may stand for a section; undefined for most. */
export const shortFor = (section: string): string | undefined => SHORT_FOR[section];

/** Names that say the unit of their number. */
const UNIT_OF: Readonly<Record<string, string>> = {
  yards: 'yd',
  grains: 'gr',
  gpi: 'gpi',
  grains_per_inch: 'gpi',
  fps: 'fps',
};

/** The unit that a name gives its number; undefined for most. */
export const unitInName = (name: string): string | undefined => UNIT_OF[name];

/** A name with the letter case, the blanks and the hyphens taken away: `drawWeight`, `Draw Weight` are draw_weight. */
export const plainName = (name: string): string =>
  name
    .trim()
    .replace(/([a-z])([A-Z])/g, '$1_$2')
    .toLowerCase()
    .replace(/[\s-]+/g, '_')
    .replace(/_+$/, '');

/**
 * The keys under a section that a name may stand for, the likelier first, with the sections below that they stand in.
 *
 * @param section its key path with dots, positions in lists left out
 */
export const calledIn = (section: string, name: string): readonly (readonly string[])[] =>
  Object.entries(CALLED[section] ?? {})
    .filter(([, names]) => names.split(' ').includes(name))
    .map(([key]) => key.split('.'));
