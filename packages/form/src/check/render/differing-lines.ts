import { html, nothing, type TemplateResult } from 'lit';
import {
  figureLabel,
  type BillRun,
  type CheckedBill,
  type ComparedFigure,
  type TariffDocument,
} from '@unitbook/engine';
import { renderDerivation } from '../../render/derivation.ts';
import { renderFold } from '../../render/fold.ts';
import type { CheckDesk } from '../check-desk.ts';
import { figuresBehind } from '../view/figure-behind.ts';
import { differenceText, figureText, isMoney, sumText } from '../view/figure-words.ts';

/** A right bill that was made, and the tariff that names its lines. */
interface Right {
  readonly right: BillRun;
  readonly tariff: TariffDocument;
}

/** How the computed figure comes about, each version of a charge by itself. */
function renderHow(name: string, right: BillRun, desk: CheckDesk): TemplateResult {
  return html`<div class="how">
    ${figuresBehind(name, right).map((figure, at) =>
      renderDerivation(figure, `check/${name}/${String(at)}`, desk),
    )}
  </div>`;
}

function renderColumns(
  { name, printed, computed, ...rest }: ComparedFigure,
  tariff: TariffDocument,
  { view: { writing } }: CheckDesk,
): TemplateResult {
  const text = (value: ComparedFigure['computed']): string =>
    value === null ? '–' : figureText(name, value, writing);
  return html`<span class="label">${figureLabel(name, tariff)}</span
    ><span class="amount on-paper"><span class="hidden">printed </span>${text(printed)}</span
    ><span class="amount own"><span class="hidden">, right </span>${text(computed)}</span
    ><span class="amount off"
      ><span class="hidden">, printed differs by </span
      >${differenceText({ name, printed, computed, ...rest }, writing)}</span
    >`;
}

function renderLine(line: ComparedFigure, { right, tariff }: Right, desk: CheckDesk): TemplateResult {
  const { name } = line;
  const columns = renderColumns(line, tariff, desk);
  if (figuresBehind(name, right).length === 0)
    return html`<li class="line" data-line=${name}><div class="plain">${columns}</div></li>`;
  const content = (isOpen: boolean): unknown => (isOpen ? renderHow(name, right, desk) : nothing);
  return html`<li class="line" data-line=${name}>
    ${renderFold({ key: `check-line/${name}`, summary: columns, content }, desk)}
  </li>`;
}

/** The figures that differ, printed beside computed, in the order of paper; each computed one opens to its working. */
export function renderDifferingLines(
  { compared, right, facts }: CheckedBill,
  desk: CheckDesk,
): TemplateResult | typeof nothing {
  const lines = compared.filter(({ agrees }) => !agrees);
  if (right === null || lines.length === 0) return nothing;
  return html`<section class="part" aria-labelledby="check-differs">
    <h3 class="sub" id="check-differs">
      ${lines.length === 1 ? 'The line that differs' : 'The lines that differ'}
    </h3>
    <p class="hint">Open a line to see how the right figure comes about.</p>
    <div class="heads" aria-hidden="true">
      <span>Line</span><span>Printed</span><span>Right</span><span>Differs by</span>
    </div>
    <ul class="lines four" id="check-lines">
      ${lines.map((line) => renderLine(line, { right, tariff: facts.tariff }, desk))}
    </ul>
  </section>`;
}

/** The names of the figures of the right bill, its charges in the order of the tariff. */
function rightNames({ month, figures }: BillRun): readonly string[] {
  const ids = new Set(
    month.bill.lines.filter(({ counts }) => counts).map(({ figure }) => `line.${figure.id}`),
  );
  const credit = [...figures.keys()].filter((name) => /^(?:opening|closing)\./.test(name));
  return ['units.billed', ...credit, ...ids, 'sum', 'rounding', 'payable'].filter((name) =>
    figures.has(name),
  );
}

function renderRightLine(
  name: string,
  { right, facts }: CheckedBill,
  desk: CheckDesk,
): TemplateResult | typeof nothing {
  const value = right?.figures.get(name);
  if (right === null || value === undefined) return nothing;
  const { writing } = desk.view;
  const text = isMoney(name) ? sumText(value, writing) : figureText(name, value, writing);
  const summary = html`<span class="label">${figureLabel(name, facts.tariff)}</span
    ><span class="amount own">${text}</span>`;
  const content = (isOpen: boolean): unknown => (isOpen ? renderHow(name, right, desk) : nothing);
  return html`<li class=${name === 'payable' ? 'total' : 'line'}>
    ${renderFold({ key: `check-right/${name}`, summary, content }, desk)}
  </li>`;
}

/** The right bill whole, folded away: each of its figures opens to its working. */
export function renderRightBill(checked: CheckedBill, desk: CheckDesk): TemplateResult | typeof nothing {
  const { right } = checked;
  if (right === null) return nothing;
  return renderFold(
    {
      key: 'check-right',
      className: 'help',
      summary: 'The right bill, line by line',
      content: (isOpen) =>
        isOpen
          ? html`<ul class="lines split">
              ${rightNames(right).map((name) => renderRightLine(name, checked, desk))}
            </ul>`
          : nothing,
    },
    desk,
  );
}
