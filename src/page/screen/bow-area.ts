import { setupForm } from '../form/setup-form.ts';
import { button, element, refill } from '../show/element.ts';
import type { TextEditor } from '../text/text-editor.ts';
import type { Desk } from './desk.ts';

/** The setup as a form or as a text; both show the same text. */
export function bowArea(
  desk: Desk,
  editor: TextEditor,
  problems: { readonly view: HTMLElement; readonly refresh: () => void },
) {
  let form = setupForm(desk);
  let isText = false;
  const place = element('div', {});
  const show = (text: boolean): void => {
    isText = text;
    asForm.setAttribute('aria-pressed', String(!text));
    asText.setAttribute('aria-pressed', String(text));
    refill(place, text ? editor.view : form.view);
    refresh();
  };
  const asForm = button('Form', () => show(false), { class: 'toggle' });
  const asText = button('Text', () => show(true), { class: 'toggle' });
  const refresh = (): void => {
    problems.refresh();
    if (isText) editor.refresh();
    else form.refresh();
  };
  show(false);
  return {
    view: element(
      'section',
      { class: 'bow', 'aria-label': 'Bow and arrow' },
      element(
        'div',
        { class: 'toggles', role: 'group', 'aria-label': 'How the setup is shown' },
        asForm,
        asText,
      ),
      problems.view,
      place,
    ),
    refresh,
    rebuild: () => {
      form = setupForm(desk);
      show(isText);
    },
    showText: () => show(true),
  };
}
