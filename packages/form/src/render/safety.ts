import { html, type TemplateResult } from 'lit';

/** What has to be said wherever the form is shown: whose work it is, and what this is not. */
export function renderSafety(): TemplateResult {
  return html`
    <section class="safety" aria-labelledby="safety">
      <h2 id="safety">Before you touch anything</h2>
      <p>
        Reading a meter needs no tool: look, write down, take a photo. Meters are sealed, and meters and
        panels are for licensed people. The direct-current side of a plant is live whenever there is daylight.
        Work on a roof is work at height. Local codes decide.
      </p>
      <p>
        Rates and rules change, and so does what a tariff file says of them. This book compares a bill with
        readings; it is no legal advice.
      </p>
    </section>
  `;
}
