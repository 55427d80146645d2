import { html, type TemplateResult } from 'lit';

/** What has to be said wherever a quote is shown. */
export function renderCautions(): TemplateResult {
  return html`
    <section class="page safety" aria-labelledby="quote-safety">
      <h2 id="quote-safety">Before anybody signs or climbs</h2>
      <p>
        A quote is an estimate, not a guarantee: weather, use, tariff and rules may all come otherwise.
        Monthly bills vary and never become zero. Compare it with another quote. This is no legal advice.
      </p>
      <p>
        Work on a roof is work at height. The direct-current side of a plant is live whenever there is
        daylight. Meters are sealed, and meters and panels are for licensed people. Local codes decide.
      </p>
    </section>
  `;
}
