import { html, nothing, type TemplateResult } from 'lit';
import { renderPlainSelect } from '../../render/select.ts';
import { putAt } from '../document/edit-quote.ts';
import { carbonFields, uncertaintyFields } from '../document/money-fields.ts';
import type { QuoteDesk } from '../quote-desk.ts';
import { renderPart } from './part.ts';
import { renderFields } from './quote-field.ts';
import { renderFindingsAt } from './quote-findings.ts';

/** How sure the inputs are, one sigma each. */
export const renderUncertainty = (desk: QuoteDesk): TemplateResult =>
  renderPart(
    'uncertainty',
    {
      add: 'Say how sure the inputs are',
      takeOut: 'Leave it out',
      told: 'The uncertainty was taken out: the answer is one figure, not a range.',
    },
    () => {
      const { policies = [], uncertainty } = desk.document;
      return html`<p class="hint">One sigma each: about two cases of three lie within it.</p>
        ${renderFields(uncertaintyFields(desk.document), desk)}
        ${
          policies.length === 0
            ? nothing
            : renderPlainSelect({
                id: 'quote-uncertainty-policy',
                label: 'A change of rules that may come',
                value: uncertainty?.policy?.name ?? '',
                options: [['', 'None is counted'], ...policies.map(({ name }) => [name, name] as const)],
                choose: (name) => {
                  const percent = uncertainty?.policy?.percent ?? '';
                  desk.change(
                    putAt(
                      desk.document,
                      ['uncertainty', 'policy'],
                      name === '' ? undefined : { name, percent },
                    ),
                  );
                },
              })
        }
        ${renderFindingsAt(['uncertainty', 'policy', 'name'], desk)}`;
    },
    desk,
  );

/** CO2 that a unit stands for. */
export const renderCarbon = (desk: QuoteDesk): TemplateResult =>
  renderPart(
    'carbon',
    { add: 'Say what CO₂ a unit stands for', takeOut: 'Leave it out', told: 'The CO₂ factor was taken out.' },
    () => renderFields(carbonFields(desk.document), desk),
    desk,
  );
