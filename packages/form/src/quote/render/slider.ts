import { html, type TemplateResult } from 'lit';
import { typed } from '../../render/desk.ts';

/** A number that can be slid. */
export interface Slider {
  readonly id: string;
  /** For who hears it: the field beside it has the label that is seen. */
  readonly label: string;
  readonly least: string;
  readonly most: string;
  readonly step: string;
  /** '' where the number is not known: the slider stands at its least. */
  readonly value: string;
  /** The value in words, such as "38 %". */
  readonly says: string;
  readonly slide: (value: string) => void;
}

/** A slider beside a typed number; each of its moves is a change. */
export function renderSlider({ id, label, least, most, step, value, says, slide }: Slider): TemplateResult {
  return html`<input
    id=${id}
    type="range"
    aria-label=${label}
    aria-valuetext=${says}
    min=${least}
    max=${most}
    step=${step}
    .value=${value === '' ? least : value}
    @input=${(event: Event) => {
      slide(typed(event));
    }}
  />`;
}
