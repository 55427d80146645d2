import { html, type TemplateResult } from 'lit';

/** What has to be said wherever a bill is checked. */
export function renderCautions(): TemplateResult {
  return html`
    <section class="page safety" aria-labelledby="check-safety">
      <h2 id="check-safety">Before you write or touch anything</h2>
      <p>
        This page compares a bill with readings and with what a tariff file says. Rates and rules change; the
        order itself decides. It is no legal advice. Pay what is undisputed in time, and ask before you pay
        less.
      </p>
      <p>
        Reading a meter needs no tool: look, write down, take a photo. Meters are sealed: never open one.
        Meters and panels are for licensed people, and the direct-current side of a plant is live whenever
        there is daylight.
      </p>
    </section>
  `;
}
