import type { Command } from 'commander';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand } from './shared-options.ts';

/** Held to what can be shown by a test; the list itself would load what computes it. */
const SHOWN = `
What can be shown:
  of the build: mass, balance, front_of_centre, mass_per_draw, bending_frequency, bends_per_push, push_load, launch_speed,
    efficiency, launch_energy, launch_momentum, drag_coefficient, drag_area, spin_per_metre, static_margin, swing_wavelength,
    swing_damping
  by range: time, speed, energy, momentum, drop, height, pin, travel, reading, height_per_travel, highest, descent, drift,
    wind_drift, spin
`;

const gathered = (text: string, before: readonly string[] = []): readonly string[] => [...before, text];

export const varyCommand = (io: Io): Command =>
  setupCommand(
    'vary',
    'Sweep one or two keys of the setup over values and see what becomes of anything the tool computes.',
  )
    .requiredOption(
      '--over <key=values>',
      'key of the setup with low:high:step or value,value,...; once or twice',
      gathered,
    )
    .option(
      '--show <names>',
      'what to show, with commas between',
      'mass,front_of_centre,launch_speed,drop,wind_drift,energy,momentum',
    )
    .addOption(rangeOption('--at <ranges>', 'ranges for what depends on range, with commas between', 60))
    .option('--plot <name>', 'what to plot; the last one shown when left out')
    .option('--crosswind <speed>', 'wind from the side, to tell the drift by', '10 mph')
    .addHelpText('after', SHOWN)
    .addHelpText(
      'after',
      examples([
        [
          'point weights against speed, drop and energy',
          'vary setup.yaml --over arrow.parts.point.mass=100gr:200gr:25gr',
        ],
        [
          'vane height and angle against drag and spin, as a file for a spreadsheet',
          'vary setup.yaml --over "arrow.parts.vanes.height=0.3in:0.7in:0.05in" --over "arrow.parts.vanes.angle=1deg:5deg:1deg" --show drag_coefficient,spin_per_metre,static_margin --csv > vanes.csv',
        ],
      ]),
    )
    .action(async (setup, options) =>
      (await import('../../reports/vary/run.ts')).runVary(io, setup, options),
    );
