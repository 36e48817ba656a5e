import type { UnitSystem } from '../../quillpath.ts';
import { element } from '../show/element.ts';
import type { Observed } from '../text/observed.ts';

const LOOKS = {
  device: 'As the device',
  light: 'Light',
  dark: 'Dark',
  red: 'Red on black, for the dark',
} as const;
const UNITS: Readonly<Record<UnitSystem, string>> = {
  imperial: 'Yards, inches, grains',
  metric: 'Metres, millimetres, grains',
  si: 'Metres, millimetres, grams, newtons',
};
const KEYS = { look: 'quillpath-look', units: 'quillpath-units' } as const;

/** A word kept for the device; null where nothing is kept, or nothing can be. */
function remembered(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function remember(key: string, word: string): void {
  try {
    localStorage.setItem(key, word);
  } catch {
    // A device that keeps nothing still shows everything.
  }
}

export function rememberedUnits(): UnitSystem {
  const kept = remembered(KEYS.units);
  return kept === 'metric' || kept === 'si' ? kept : 'imperial';
}

function choices<Name extends string>(
  legend: string,
  names: Readonly<Record<Name, string>>,
  chosen: string,
  choose: (name: Name) => void,
): HTMLElement {
  const all = Object.keys(names).filter((name): name is Name => name in names);
  return element(
    'fieldset',
    { class: 'choices' },
    element('legend', {}, legend),
    all.map((name) => {
      const id = `look-${name}`;
      return element(
        'div',
        { class: 'tick' },
        element('input', {
          id,
          type: 'radio',
          name: legend,
          value: name,
          checked: name === chosen,
          onchange: () => choose(name),
        }),
        element('label', { for: id }, names[name]),
      );
    }),
  );
}

/** Units and colours, remembered for the device. */
export function looks(units: Observed<UnitSystem>): HTMLElement {
  const show = (look: string): void => document.documentElement.setAttribute('data-look', look);
  const look = remembered(KEYS.look) ?? 'device';
  show(look);
  return element(
    'div',
    {},
    choices('Units', UNITS, units.value(), (name) => {
      remember(KEYS.units, name);
      units.set(name);
    }),
    choices('Colours', LOOKS, look, (name) => {
      remember(KEYS.look, name);
      show(name);
    }),
  );
}
