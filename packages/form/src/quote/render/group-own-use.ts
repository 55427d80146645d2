import { html, type TemplateResult } from 'lit';
import { selfUseFields } from '../document/quote-fields.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderProfile } from './profile.ts';
import { renderFields } from './quote-field.ts';
import { renderFindingsAt } from './quote-findings.ts';

/** Why the house uses so much of it: the number stands by its slider; or intervals that tell it. */
export const renderSelfUse = (desk: QuoteDesk): TemplateResult =>
  html`${renderFields(selfUseFields().slice(1), desk)}${renderFindingsAt(['selfUse'], desk)}
  ${renderProfile(desk)}`;
