import type { SectionView } from '../form/section-view.ts';
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
  // Made when it is first seen: it has many fields, and the first minutes need five.
  let form: SectionView | null = null;
  const shownForm = (): SectionView => {
    form ??= setupForm(desk);
    return form;
  };
  let isText = false;
  const place = element('div', {});
  const show = (text: boolean): void => {
    isText = text;
    asForm.setAttribute('aria-pressed', String(!text));
    asText.setAttribute('aria-pressed', String(text));
    refill(place, text ? editor.view : shownForm().view);
    refresh();
  };
  const asForm = button('Form', () => show(false), { class: 'toggle', 'aria-pressed': 'true' });
  const asText = button('Text', () => show(true), { class: 'toggle', 'aria-pressed': 'false' });
  const refresh = (): void => {
    problems.refresh();
    if (isText) editor.refresh();
    else if (form === null) show(false);
    else form.refresh();
  };
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
      const wasSeen = form !== null;
      form = null;
      if (wasSeen) show(isText);
    },
    showText: () => show(true),
  };
}
