import { html, nothing, type TemplateResult } from 'lit';
import type { Finding } from '@unitbook/engine';
import type { Meter } from '../household/later-meters.ts';
import { dateEvent, type MeterChange } from '../household/meter-change.ts';
import type { RowRegister } from '../view/echo-rows.ts';
import { isUnfinished } from '../view/unfinished.ts';
import type { RowView } from '../view/view-book.ts';
import type { Desk } from './desk.ts';
import { renderField } from './field.ts';
import { renderFindings } from './findings.ts';
import {
  about,
  fieldId,
  registerIn,
  registerInput,
  renderPrinted,
  renderRegisterInput,
} from './register-field.ts';
import { shortName } from './register-words.ts';

/** A change with the rows that tell it. */
export interface ShownChange extends MeterChange {
  readonly old: RowView | null;
  readonly fresh: RowView | null;
  /** Whether no other meter was put in: the counter of the same one began anew. */
  readonly isReset: boolean;
}

/** A change with its rows as the page shows them. */
export function shownChange(change: MeterChange, desk: Desk): ShownChange {
  const rowAt = (index: number | null): RowView | null =>
    index === null ? null : (desk.view.rows[index] ?? null);
  const { final, first, later, meter } = change;
  const isReset = meter === 'generation' && first !== null && later === null;
  return { ...change, old: rowAt(final), fresh: rowAt(first), isReset };
}

/** Findings that only say that something is missing, with what is missing here. */
const asked = (findings: readonly Finding[], missing: string): readonly Finding[] =>
  findings.map((finding) => (isUnfinished(finding) ? { ...finding, remedy: missing } : finding));

/** One date for both readings, or one for each where they differ. */
export function renderDates({ old, fresh, isReset }: ShownChange, desk: Desk): unknown {
  const isOne = old !== null && fresh !== null && old.row.date === fresh.row.date;
  const whole = isReset ? 'Date on which it began anew' : 'Date of the change';
  const named = isOne
    ? [[old, whole] as const]
    : [
        [old, 'Date of the last reading of the old meter'] as const,
        [fresh, 'Date of the first reading of the new meter'] as const,
      ];
  return named.map(([row, label]) => {
    if (row === null) return nothing;
    return renderField(
      {
        id: fieldId(row.index, 'date'),
        label,
        hint: isReset ? 'such as 16 Apr 2025' : 'from the slip, such as 16 Apr 2025',
        value: row.row.date,
        echo: row.day === null ? '' : desk.view.writing.day(row.day),
        findings: asked(about(row, 'date'), isReset ? 'the day.' : 'the day, from the replacement slip.'),
        inputMode: 'text',
        input: (text) => {
          desk.change(dateEvent(desk.household, row.index, text));
        },
      },
      desk,
    );
  });
}

function renderNumber(
  row: RowView | null,
  own: RowRegister | undefined,
  words: string,
  desk: Desk,
): TemplateResult {
  if (row === null || own === undefined) return html`<span class="carried">—</span>`;
  const field = registerInput(row, own, desk);
  return html`<label class="hidden" for=${field.id}>${shortName(own.register)}, ${words}</label>
    ${renderRegisterInput(field)}`;
}

const isOf = (meter: Meter, { register }: RowRegister): boolean =>
  (register.id === 'generation') === (meter === 'generation');

/** The last number of the old meter and the first of the new one, register by register. */
export function renderNumbers({ meter, old, fresh, isReset }: ShownChange, desk: Desk): unknown {
  const rows = [old, fresh].filter((row) => row !== null);
  const lines = new Map(
    rows.flatMap(({ registers }) =>
      registers.filter((one) => isOf(meter, one)).map((one) => [one.register.key, one.register] as const),
    ),
  );
  return [...lines].map(
    ([key, register]) =>
      html`<div class="register two">
        <div class="name"><span class="label">${shortName(register)}</span></div>
        <div class="previous">
          ${renderNumber(old, old === null ? undefined : registerIn(old, key), isReset ? 'last number' : 'last number of the old meter', desk)}
        </div>
        <div class="present">
          ${renderNumber(fresh, fresh === null ? undefined : registerIn(fresh, key), isReset ? 'first number' : 'first number of the new meter', desk)}
        </div>
        ${rows.map((row) => {
          const own = registerIn(row, key);
          if (own === undefined) return nothing;
          const { findings, id } = registerInput(row, own, desk);
          return html`${renderPrinted(row, key, desk)}${renderFindings(findings, id, desk)}`;
        })}
      </div>`,
  );
}
