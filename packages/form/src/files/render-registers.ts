import { html, nothing, type TemplateResult } from 'lit';
import { renderPlainSelect } from '../render/select.ts';
import type { Offer } from './fit-book.ts';
import { CYCLE_DAYS, monthlyDays, type DaysMode } from './offered-days.ts';
import type { Panel } from './panel.ts';
import { renderHeading, renderSentences } from './parts.ts';
import { renderFound } from './render-found.ts';
import { otherMeters } from './meter-in-force.ts';
import { renderOffers } from './render-offers.ts';
import { lacksPoint, type Session } from './session.ts';
import { counted, listed } from './words.ts';

/** Days without a reading are named up to here. */
const MOST_NAMED = 3;

function renderMode({ choices, registers }: Session, panel: Panel): TemplateResult {
  const { offers } = registers;
  const modes: readonly (readonly [DaysMode, string])[] = [
    ['all', `all ${counted(offers.length, 'day')}`],
    ['monthly', 'one day of each month'],
    ['picked', 'days that I tick'],
  ];
  const days = CYCLE_DAYS.map(
    (day) => [String(day), day === 1 ? 'the first' : `day ${String(day)}`] as const,
  );
  return html`<div class="row">
    ${renderPlainSelect({
      id: 'offer-mode',
      label: 'Readings of',
      value: choices.mode,
      options: modes,
      choose: (mode) => {
        panel.choose({ mode: mode as DaysMode });
      },
    })}
    ${
      choices.mode === 'monthly'
        ? renderPlainSelect({
            id: 'month-day',
            label: 'The day',
            value: String(choices.monthDay),
            options: days,
            choose: (day) => {
              panel.choose({ monthDay: Number.parseInt(day, 10) });
            },
          })
        : nothing
    }
  </div>`;
}

/** The readings of the days that are wanted, and what is to be said of days that have none. */
function offered(
  { choices, registers }: Session,
  panel: Panel,
): {
  readonly offers: readonly Offer[];
  readonly sentences: readonly string[];
} {
  const { offers } = registers;
  if (choices.mode !== 'monthly') return { offers, sentences: [] };
  const { days, lacking } = monthlyDays(
    offers.map(({ day }) => day),
    choices.monthDay,
  );
  const { day: words } = panel.desk.writing;
  const named = lacking
    .slice(0, MOST_NAMED)
    .map(
      ({ day, nearest }) =>
        `No reading on ${words(day)}; the nearest is of ${words(nearest)}. It is never taken for another day: tick it if you want it.`,
    );
  const more = lacking.length - named.length;
  const rest = more > 0 ? [`And ${counted(more, 'other day')} without a reading.`] : [];
  return { offers: offers.filter(({ day }) => days.includes(day)), sentences: [...named, ...rest] };
}

/** What is to be said where a file is of a meter that the account does not name. */
function otherMeterNotes({ file }: Session, { desk }: Panel): readonly string[] {
  const meters = (file?.registers ?? []).map(({ stream }) => stream.meter);
  const others = otherMeters(meters, desk.household.account);
  return others.length === 0
    ? []
    : [`The file is of meter ${listed(others)}; “This account” names another. Is it the right file?`];
}

/** The readings of registers that a file holds, and the days that can be taken over. */
export function renderRegisters(session: Session, panel: Panel): TemplateResult | typeof nothing {
  const { registers, choices } = session;
  const { writing } = panel.desk;
  const events =
    registers.events === 0
      ? []
      : [
          `${counted(registers.events, 'reading')} of a meter that ends or begins ${registers.events === 1 ? 'is' : 'are'} left out: that a meter was changed is typed in the month itself.`,
        ];
  // Until it is said which connection is meant, everything is there several times.
  if (lacksPoint(session)) return nothing;
  if (registers.offers.length === 0) return renderFound(registers.findings, writing);
  const { offers, sentences } = offered(session, panel);
  return html`
    ${renderHeading('Readings to take over')} ${renderFound(registers.findings, writing)}
    ${registers.offers.length > 1 ? renderMode(session, panel) : nothing}
    ${renderSentences([...otherMeterNotes(session, panel), ...events, ...sentences])}
    ${renderOffers({ key: 'registers', offers, choices, isPicking: choices.mode === 'picked' }, panel)}
  `;
}
