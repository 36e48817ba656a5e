import { renderSvg } from '../../documents/render/svg.ts';
import type { QuestionName } from '../../quillpath.ts';
import { askedOf, type Beside } from '../answers/asked-of.ts';
import type { Given } from '../answers/given.ts';
import type { Desk } from '../screen/desk.ts';
import { button } from '../show/element.ts';

/** Buttons that save the document of a question: the bytes that the command line writes. */
export function paperButtons(
  desk: Desk,
  name: QuestionName,
  beside: () => Beside,
  given: () => Given,
): readonly HTMLElement[] {
  const drawing = async () => {
    const dated = Date.now();
    const asked = askedOf(desk, name, given(), { ...beside(), dated });
    if (asked === null) throw new Error('There is nothing to print yet.');
    const outcome = await desk.asker.ask(`paper of ${name}`, asked);
    if (outcome === null) throw new Error('It was stopped.');
    if (!('report' in outcome)) throw new Error(outcome.failure);
    const { sheet, title } = outcome.report;
    if (sheet === null) throw new Error('This question has no document.');
    return { drawing: sheet, title, dated };
  };
  const tell = (error: unknown): void => desk.say(error instanceof Error ? error.message : String(error));
  const pdf = async (): Promise<void> => {
    desk.say('Making the PDF…');
    desk.save(`${name}.pdf`, await desk.asker.pdf(await drawing()), 'application/pdf');
  };
  const svg = async (): Promise<void> => {
    const { drawing: sheet, title } = await drawing();
    const [page, ...more] = sheet.pages;
    if (page === undefined || more.length > 0)
      throw new Error(
        'An SVG file holds one page, and this needs more. Save it as PDF, or ask for fewer copies.',
      );
    desk.save(`${name}.svg`, renderSvg(page, { title }), 'image/svg+xml');
  };
  return [
    button('PDF to print', () => void pdf().catch(tell), { 'data-paper': `${name}.pdf` }),
    button('SVG', () => void svg().catch(tell), { class: 'second', 'data-paper': `${name}.svg` }),
  ];
}
