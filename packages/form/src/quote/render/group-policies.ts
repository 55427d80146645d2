import { html, nothing, type TemplateResult } from 'lit';
import { parseDay } from '@unitbook/engine';
import { renderPlainSelect } from '../../render/select.ts';
import { fieldIdOf, putAt } from '../document/edit-quote.ts';
import { policyFields } from '../document/money-fields.ts';
import { knownRule, type CaseRule, type KnownRule } from '../document/settlement-rules.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { ruleName, ruleWords } from '../view/settlement-words.ts';
import { renderLines } from './lines.ts';
import { renderFindingsAt } from './quote-findings.ts';

const STAYS = '';
/** A rule that is neither of a tariff at hand nor came with the quote as it was opened. */
const AS_IT_IS = 'as-it-is';

function choices(rule: CaseRule | undefined, desk: QuoteDesk): readonly (readonly [string, string])[] {
  const { writing } = desk.view;
  const dayOf = (iso: string): string => {
    const day = parseDay(iso);
    return day === null ? iso : writing.day(day);
  };
  const isOther = rule !== undefined && knownRule(rule, desk.others.rules) === null;
  return [
    [STAYS, 'Stays as it is in the tariff'],
    ...(isOther ? [[AS_IT_IS, 'As it was chosen before'] as const] : []),
    ...desk.others.rules.map((one) => [one.key, ruleName(one, dayOf)] as const),
  ];
}

function chosenKey(rule: CaseRule | undefined, rules: readonly KnownRule[]): string {
  if (rule === undefined) return STAYS;
  return knownRule(rule, rules)?.key ?? AS_IT_IS;
}

/** The settlement of a case: which rule, and what it says. */
function renderRule(at: number, desk: QuoteDesk): TemplateResult {
  const path = ['policies', at, 'settlement'];
  const rule = desk.document.policies?.[at]?.settlement;
  const { rules } = desk.others;
  return html`${renderPlainSelect({
      id: fieldIdOf(path),
      label: 'Units given to the grid then',
      value: chosenKey(rule, rules),
      options: choices(rule, desk),
      choose: (key) => {
        const chosen = rules.find((one) => one.key === key)?.rule;
        if (key === STAYS || chosen !== undefined) desk.change(putAt(desk.document, path, chosen));
      },
    })}
    <p class="hint" id="${fieldIdOf(path)}-words">
      ${
        rule === undefined
          ? 'Settled as the tariff settles them; only what is typed above is different.'
          : ruleWords(rule, desk.view.writing)
      }
    </p>`;
}

/** Whether rules of a tariff are still to come. */
const isWaiting = ({ others }: QuoteDesk): boolean => others.list.some(({ view }) => view.kind === 'opening');

/** What else the rules may become, case by case. */
export const renderPolicies = (desk: QuoteDesk): TemplateResult => html`
  ${renderLines(
    {
      path: ['policies'],
      fieldsOf: policyFields,
      blank: { name: '', from: '' },
      add: 'Add a case',
      takeOut: 'Take this case out',
      told: 'Case',
      more: (at) => renderRule(at, desk),
    },
    desk,
  )}
  ${renderFindingsAt(['policies'], desk)}
  ${isWaiting(desk) ? html`<p class="hint">Fetching the rules of the other tariffs …</p>` : nothing}
  <p class="hint">
    Rules can be chosen from the tariffs listed under “Tariff and account”, and from files opened under “Other
    tariffs”. Each case is worked out with the others “If it comes otherwise”.
  </p>
`;
