import { html, type TemplateResult } from 'lit';
import type { Desk } from './desk.ts';
import { renderFold } from './fold.ts';

/** What stands beside the number on a meter's screen, for whoever reads it the first time. */
export function renderScreenHelp(desk: Desk): TemplateResult {
  return renderFold(
    {
      key: 'screen-help',
      className: 'help',
      summary: 'What does the screen say next to the number?',
      content: () => html`
        <dl>
          <dt>Import</dt>
          <dd>IMP, DEL, 1.8.0, A+, 002, “forward”, an arrow towards the house. It grows at night.</dd>
          <dt>Export</dt>
          <dd>EXP, REC, 2.8.0, A−, 006, “reverse”, an arrow towards the line. It grows on a sunny noon.</dd>
          <dt>Not these</dt>
          <dd>
            888888 is the screen test. NET is import less export. “Last bill” stands still. kW, kVA and PF are
            no units.
          </dd>
          <dt>Not sure?</dt>
          <dd>
            Codes differ from meter to meter. Take the big number that only grows, with the red digit or the
            digits after the dot behind a point: 12892.4. Read through the cover; nothing needs to be opened.
          </dd>
        </dl>
      `,
    },
    desk,
  );
}
