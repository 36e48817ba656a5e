/**
 * The public entry: the questions that the command line asks, for scripts and pages. It touches no file, no terminal, no document
 * and no clock, and does nothing when it is imported: the computation of a question is loaded when it is first asked.
 *
 *   const setup = openSetup(text, 'setup.yaml');           // YAML text in; every problem of it at once as a SetupError
 *   const { data } = await ask('marks', setup, { from: '20 yd', to: '60 yd' });
 */

export { type Copy, type Drawing, type Item, itemsOf, type Page } from './documents/page/drawing.ts';
export type { Plot } from './documents/plot/plot-data.ts';
export { renderSvg } from './documents/render/svg.ts';
export { renderTableCsv, renderTableText } from './documents/render/text.ts';
export type { Cell, Column, Table } from './documents/table/table.ts';
/** What can go wrong, each with a `code`: the setup, a quantity, an option, a value outside its domain, a computation. */
export { NumericalError } from './numerics/numerical-error.ts';
export type { UnitSystem } from './quantities/display-units.ts';
export { DomainError } from './quantities/domain-error.ts';
export { formatQuantity } from './quantities/format.ts';
export { parseQuantity } from './quantities/parse.ts';
export { QuantityError } from './quantities/quantity-error.ts';
export { ask, type Wanted } from './reports/ask.ts';
export type { Option, Options } from './reports/asked/option.ts';
export type { Question } from './reports/asked/question.ts';
export { QuestionError } from './reports/asked/question-error.ts';
export { failureWords } from './reports/failure-words.ts';
export type { Progress } from './reports/occasion.ts';
export { type Asking, type GivenTo, QUESTIONS, type QuestionName } from './reports/questions.ts';
export type { Block, Caution, Report } from './reports/report.ts';
export { type Pool, perform } from './reports/tasks.ts';
export { type OpenOptions, type OpenSetup, openSetup } from './setup/open.ts';
export { type Problem, SetupError } from './setup/problem.ts';
export { type Override, readSetup } from './setup/read.ts';
export type { SetupFile } from './setup/schema/schema.ts';
export { starterSetup } from './setup/starter.ts';
