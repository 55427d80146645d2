import type { TemplateResult } from 'lit';
import type { Finding } from '@unitbook/engine';
import { changeAccount } from '../household/edit-household.ts';
import type { Desk } from './desk.ts';
import { renderField } from './field.ts';
import { renderPlainSelect, type Select } from './select.ts';

/** A field of the account: the way to it in the document, its words and what was typed. */
export interface AccountField {
  readonly path: readonly string[];
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  readonly unit: string;
  readonly isText?: boolean;
  /** Whether a blank takes it out of the account. */
  readonly isOptional?: boolean;
}

const fieldIdOf = (path: readonly string[]): string => `account-${path.join('-')}`;

const about = (findings: readonly Finding[], path: readonly string[]) =>
  findings.filter((finding) => finding.path.join('.') === path.join('.'));

/**
 * Change a field. Typing keeps the section open that would otherwise close once everything is in; the fields
 * of a meter that took the place of another stand in the month of the change.
 */
export function changeField(desk: Desk, path: readonly string[], value: unknown): void {
  if (!path.includes('later')) desk.setOpen('account', true);
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
        const isLeftOut = field.isOptional === true && text.trim() === '';
        changeField(desk, field.path, isLeftOut ? undefined : text);
      },
    },
    desk,
  );
}

/** A field that is chosen from a list; what is chosen as '' is left out of the account. */
export function renderSelect(
  path: readonly string[],
  words: Pick<Select, 'label' | 'hint' | 'value' | 'options'>,
  desk: Desk,
): TemplateResult {
  return renderPlainSelect({
    ...words,
    id: fieldIdOf(path),
    choose: (value) => {
      changeField(desk, path, value === '' ? undefined : value);
    },
  });
}
