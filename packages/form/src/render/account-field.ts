import { html, type TemplateResult } from 'lit';
import type { Finding } from '@unitbook/engine';
import { changeAccount } from '../household/edit-household.ts';
import { typed, type Desk } from './desk.ts';
import { renderField } from './field.ts';

/** A field of the account: the way to it in the document, its words and what was typed. */
export interface AccountField {
  readonly path: readonly string[];
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  readonly unit: string;
  readonly isText?: boolean;
}

const fieldIdOf = (path: readonly string[]): string => `account-${path.join('-')}`;

const about = (findings: readonly Finding[], path: readonly string[]) =>
  findings.filter((finding) => finding.path.join('.') === path.join('.'));

/** Change a field. Typing keeps the section open that would otherwise close once everything is in. */
export function changeField(desk: Desk, path: readonly string[], value: unknown): void {
  desk.setOpen('account', true);
  desk.change(changeAccount(desk.household, path, value));
}

/** A field that is typed in, with its echo and findings. */
export function renderAccountField(field: AccountField, desk: Desk): TemplateResult {
  const { account, writing } = desk.view;
  const read = account.read[field.path.join('.')] ?? null;
  const size = read === null ? '' : read.replace(/^-/, '');
  return renderField(
    {
      id: fieldIdOf(field.path),
      label: field.label,
      ...(field.hint === undefined ? {} : { hint: field.hint }),
      value: field.value,
      echo: field.isText === true || read === null ? '' : `Read as ${writing.number(size)}${field.unit}`,
      findings: about(account.findings, field.path),
      inputMode: field.isText === true ? 'text' : 'decimal',
      input: (text) => {
        changeField(desk, field.path, text);
      },
    },
    desk,
  );
}

/** A field that is chosen from a list. */
export function renderSelect(
  path: readonly string[],
  words: {
    readonly label: string;
    readonly value: string;
    readonly options: readonly (readonly [string, string])[];
  },
  desk: Desk,
): TemplateResult {
  const id = fieldIdOf(path);
  return html`
    <div class="field">
      <label for=${id}>${words.label}</label>
      <select
        id=${id}
        @change=${(event: Event) => {
          changeField(desk, path, typed(event));
        }}
      >
        ${words.options.map(
          ([value, text]) => html`<option value=${value} ?selected=${value === words.value}>${text}</option>`,
        )}
      </select>
    </div>
  `;
}
