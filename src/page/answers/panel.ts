import { renderTableCsv } from '../../documents/render/text.ts';
import type { Question, Report } from '../../quillpath.ts';
import { QUESTIONS, type QuestionName } from '../../reports/questions.ts';
import { paperButtons } from '../keep/paper-buttons.ts';
import { tapePicture } from '../keep/tape-picture.ts';
import type { Desk } from '../screen/desk.ts';
import { button, element, freshId, refill } from '../show/element.ts';
import { reportView } from '../show/report-view.ts';
import { askedOf, type Beside } from './asked-of.ts';
import { isLong } from './asker.ts';
import { newestFirst } from './newest-first.ts';
import { optionForm } from './option-form.ts';
import { optionLabel } from './option-label.ts';
import { otherSetups } from './other-setups.ts';
import { questionTitle } from './question-titles.ts';

/** A question that can be opened, asked and shown. */
export interface Panel {
  readonly view: HTMLElement;
  /** Asks again when it is open, after the setup or the units changed. */
  readonly refresh: () => void;
  readonly open: () => void;
}

export function panel(desk: Desk, name: QuestionName): Panel {
  const title = questionTitle(name);
  const body = element('div', { class: 'panel-body' });
  const view = element(
    'details',
    { class: 'panel', id: `ask-${name}`, 'data-question': name },
    element('summary', {}, element('h2', {}, title)),
    body,
  );
  let refreshed = (): void => {};
  const start = async (): Promise<void> => {
    if (body.firstChild !== null) return;
    const purpose = element('p', { class: 'purpose' });
    body.append(purpose);
    const question: Question = await QUESTIONS[name].question();
    purpose.textContent = question.purpose;
    refreshed = fill(desk, name, question, body);
    refreshed();
  };
  view.addEventListener('toggle', () => {
    if (!view.open) return;
    void start();
    refreshed();
  });
  return {
    view,
    refresh: () => {
      if (view.open) refreshed();
    },
    open: () => {
      view.open = true;
    },
  };
}

/** What stands in an open panel; gives the way to ask again. */
function fill(desk: Desk, name: QuestionName, question: Question, body: HTMLElement): () => void {
  const place = element('div', { class: 'answer', 'aria-live': 'polite', 'aria-busy': 'false' });
  const progress = element('progress', {
    max: 1,
    hidden: true,
    'aria-label': `${questionTitle(name)}: how far`,
  });
  const stop = button('Stop', () => stopNow(), { class: 'second', hidden: true });
  const several = question.setups === 'several';
  let isStopped = false;
  const stopNow = (): void => {
    isStopped = true;
    desk.asker.stop(name);
  };
  let last: Report | null = null;
  const form = optionForm(desk, question, () => again());
  const beside = several ? otherSetups(desk, () => again()) : null;
  const unshot = withoutShots(() => again());
  const besides = (): Beside => ({ others: beside?.chosen() ?? [], uncalibrated: unshot.isChosen() });
  form.view.append(unshot.view);
  const busy = (is: boolean): void => {
    place.setAttribute('aria-busy', String(is));
    stop.hidden = !(is && isLong(name));
    progress.hidden = !(is && isLong(name));
  };
  const askNow = async (): Promise<void> => {
    const asked = askedOf(desk, name, form.given(), {
      ...besides(),
      dated: name === 'tape' ? Date.now() : null,
    });
    if (asked === null) {
      refill(place, element('p', {}, 'Your marks come first: write the five numbers under Bow.'));
      return;
    }
    busy(true);
    progress.removeAttribute('value');
    const outcome = await desk.asker.ask(name, asked, (_, done, total) => {
      progress.value = done / total;
    });
    busy(false);
    if (outcome === null) {
      if (isStopped) refill(place, element('p', {}, 'Stopped.'));
      isStopped = false;
      return;
    }
    if ('report' in outcome) {
      last = outcome.report;
      const picture =
        name === 'tape' && last.sheet !== null ? tapePicture(last.sheet, last.title) : undefined;
      refill(place, reportView(last, { title: questionTitle(name) }, picture));
    } else
      refill(
        place,
        element('p', { class: 'warning', role: 'alert' }, outcome.failure),
        outcome.draft ? draftHint() : null,
      );
  };
  const again = newestFirst(askNow, !isLong(name));
  const csv = button(
    'Table as CSV',
    () => {
      if (last !== null) desk.save(`${name}.csv`, renderTableCsv(last.rows), 'text/csv');
    },
    { class: 'second' },
  );
  body.append(
    element('div', { class: 'busy' }, progress, stop),
    place,
    beside === null ? '' : beside.view,
    form.view,
    element(
      'div',
      { class: 'saves' },
      question.sheet === null ? null : paperButtons(desk, name, besides, form.given),
      question.hasRows ? csv : null,
    ),
  );
  return again;
}

/** A tick for answers from the measurements of bow and arrow alone. */
function withoutShots(changed: () => void) {
  const id = freshId('unshot');
  const box = element('input', { id, type: 'checkbox', onchange: changed });
  const label = element('label', { for: id }, optionLabel('uncalibrated'));
  return { view: element('div', { class: 'tick' }, box, label), isChosen: () => box.checked };
}

const draftHint = (): HTMLElement =>
  element('p', {}, 'Tick “anyway” under “Change what is asked” for a draft that is marked as one.');
