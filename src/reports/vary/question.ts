import { list, optionalText, rangeIn, text } from '../asked/option.ts';
import { question as asked } from '../asked/question.ts';

/** Held by tests to the keys that there are and to what can be shown; the lists themselves would load what computes them. */
const SHOWN = `
Keys that are often varied (examples/README.md has all that there are):
  arrow.parts.point.mass, arrow.parts.vanes.height, arrow.parts.vanes.angle, arrow.parts.vanes.count, arrow.parts.shaft.length,
  arrow.mass, arrow.diameter, launch.speed, bow.peak_draw_weight, bow.draw_length, bow.peep_height, sight.peep_to_pin,
  air.temperature, air.altitude

What can be shown:
  of the build: mass, balance, front_of_centre, mass_per_draw, bending_frequency, bends_per_push, push_load, launch_speed,
    efficiency, launch_energy, launch_momentum, drag_coefficient, drag_area, spin_per_metre, static_margin, swing_wavelength,
    swing_damping
  by range: time, speed, energy, momentum, drop, height, pin, travel, reading, height_per_travel, highest, descent, drift,
    wind_drift, spin
`;

export const question = asked({
  name: 'vary',
  purpose: 'Sweep one or two keys of the setup over values and see how anything the tool computes changes.',
  options: {
    over: list('key=values', 'key of the setup with low:high:step or value,value,...; once or twice'),
    show: text(
      'names',
      'mass,front_of_centre,launch_speed,drop,wind_drift,energy,momentum',
      'what to show, with commas between',
    ),
    at: { ...rangeIn(60, 'ranges for what depends on range, with commas between'), of: 'ranges' },
    plot: optionalText('name', 'what to plot; the last one shown when left out'),
    crosswind: text('speed', '10 mph', 'wind from the side, for the drift', 'windSpeed'),
  },
  more: SHOWN,
  examples: [
    [
      'point weights against speed, drop and energy',
      'setup.yaml --over arrow.parts.point.mass=100gr:200gr:25gr',
    ],
    [
      'vane height and angle against drag and spin, as a file for a spreadsheet',
      'setup.yaml --over "arrow.parts.vanes.height=0.3in:0.7in:0.05in" --over ' +
        '"arrow.parts.vanes.angle=1deg:5deg:1deg" --show drag_coefficient,spin_per_metre,static_margin --csv ' +
        '> vanes.csv',
    ],
  ],
});
